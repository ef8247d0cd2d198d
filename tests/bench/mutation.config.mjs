/*
 * Mutation testing with Stryker (Apache-2.0), which is no dependency, since it brings 167 packages with it:
 *
 *   npm install --no-save --legacy-peer-deps @stryker-mutator/core@9.6.1 @stryker-mutator/vitest-runner@9.6.1
 *   EVENHAND_MUTATE='src/core/stats/w*.ts' EVENHAND_TESTS='tests/core/stats/*.test.ts' \
 *     npx stryker run tests/bench/mutation.config.mjs
 *
 * It changes the sources where they stand and puts them back: run it in a clone of its own.
 */
import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const { EVENHAND_MUTATE = 'src/core/stats/**/*.ts', EVENHAND_TESTS = 'tests/core/stats/**/*.test.ts' } =
  process.env;

const configFile = join(tmpdir(), `evenhand-mutation-${process.pid}.mjs`);
const test = { include: EVENHAND_TESTS.split(','), testTimeout: 60_000, pool: 'threads' };
writeFileSync(configFile, `export default ${JSON.stringify({ root: process.cwd(), test })};\n`);

export default {
  testRunner: 'vitest',
  vitest: { configFile, related: false },
  mutate: EVENHAND_MUTATE.split(','),
  coverageAnalysis: 'perTest',
  // A changed constant at a module's top would need every test anew.
  ignoreStatic: true,
  concurrency: 1,
  timeoutMS: 3000,
  timeoutFactor: 2,
  inPlace: true,
  disableTypeChecks: false,
  // The compiler has no interface that Stryker knows.
  tsconfigFile: 'none.json',
  reporters: ['progress-append-only', 'clear-text'],
  clearTextReporter: { logTests: false, reportTests: false },
};

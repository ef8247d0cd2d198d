import { chmodSync, existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const root = import.meta.dirname;
const reportClient = join(root, 'src/report/client/main.ts');
const program = join(root, 'dist/main.js');

rmSync(join(root, 'dist'), { recursive: true, force: true });

await build({
  entryPoints: [join(root, 'src/main.ts')],
  outdir: join(root, 'dist'),
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  packages: 'external',
  splitting: true,
  // Beside main.js, so that `new URL('./report-client.js', import.meta.url)` holds in every part.
  chunkNames: '[name]-[hash]',
  sourcemap: true,
  logLevel: 'warning',
});
chmodSync(program, 0o755);

if (existsSync(reportClient)) {
  await build({
    entryPoints: [reportClient],
    outfile: join(root, 'dist/report-client.js'),
    bundle: true,
    platform: 'browser',
    target: 'es2022',
    format: 'iife',
    minify: true,
    legalComments: 'inline',
    // wav-decoder asks for `global.Buffer`, which a browser doesn't have.
    define: { global: 'globalThis' },
    logLevel: 'warning',
  });
}

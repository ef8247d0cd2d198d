import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { scenario, scenarioNames, scenarios } from '../../fixtures/generator/scenarios.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { args, executablePath } from '../browser/chromium.ts';
import { engineAnswers } from '../browser/engine-answers.ts';
import { runningPage } from '../server/running-page.ts';
import { resultDifferences } from '../support/result-differences.ts';
import { markdownTable } from './markdown-table.ts';

/**
 * The same takes graded by several versions of Node and by Chromium, and how far their results lie apart:
 * `EVENHAND_NODES=node22:node24 tsx tests/bench/engines.ts [SEED [NAMES, AS A REGULAR EXPRESSION]]` writes reports/engines.md. `npm run build` first.
 */
const root = join(import.meta.dirname, '../..');
const seed = Number(process.argv[2] ?? 78);
const nodes = (process.env.EVENHAND_NODES ?? '').split(delimiter).filter((path) => path !== '');
if (nodes.length === 0) throw new Error('EVENHAND_NODES names no other version of Node.');

const folder = mkdtempSync(join(tmpdir(), 'evenhand-engines-'));
const takes = scenarioNames
  .filter((name) => new RegExp(process.argv[3] ?? '').test(name))
  .map((name) => {
    const { spec } = scenario(name, seed);
    const { sheetText } = scenarios[name];
    const { samples, sampleRate } = renderTake(spec);
    const [wav, sheet] = [join(folder, `${name}.wav`), join(folder, `${name}.sheet`)];
    writeFileSync(wav, encodeWav(samples, sampleRate));
    writeFileSync(sheet, sheetText);
    return { name, wav, sheet, sheetText };
  });

function gradedBy(node: string, { wav, sheet }: (typeof takes)[number]): TakeResult {
  const program = [join(root, 'dist/main.js'), 'grade', wav, '--sheet', sheet, '--json', '-'];
  // A take that can't be graded is a result, too, and says so with its exit code.
  const { stdout } = spawnSync(node, program, { encoding: 'utf8', maxBuffer: 64 * 2 ** 20 });
  return JSON.parse(stdout);
}

const served = await runningPage();
const browser = await chromium.launch({ executablePath, args });
async function gradedInPage({ name, wav, sheetText }: (typeof takes)[number]): Promise<TakeResult> {
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) throw new Error(name);
  const bytes = readFileSync(wav).toString('base64');
  const { given } = await engineAnswers(browser, served.port, [
    { bytes, sheet: parsed.sheet, name: `${name}.wav` },
  ]);
  const [answer] = given;
  if (answer?.answer !== 'result') throw new Error(`${name}: ${JSON.stringify(answer)}`);
  return answer.result;
}

/** The greatest difference found so far of each sort, and where. */
const sorts = ['stroke times, s', 'stroke levels, dB', 'other figures, share of the figure'] as const;
const others = [
  ...nodes.map((node) => ({
    name: `Node ${execFileSync(node, ['--version'], { encoding: 'utf8' }).trim().slice(1)}`,
    grade: async (take: (typeof takes)[number]) => gradedBy(node, take),
  })),
  { name: `Chromium ${browser.version()}`, grade: gradedInPage },
].map((engine) => ({
  ...engine,
  most: new Map(sorts.map((sort) => [sort as string, { size: 0, at: '–' }])),
  decisions: [] as string[],
  alike: 0,
}));

for (const take of takes) {
  const here = gradedBy(process.execPath, take);
  for (const engine of others) {
    // What a name of a program or file says of itself is no outcome.
    const found = resultDifferences(here, JSON.parse(JSON.stringify(await engine.grade(take)))).filter(
      ({ path }) => !path.startsWith('/recording/name') && !path.startsWith('/recording/path'),
    );
    if (found.length === 0) engine.alike += 1;
    for (const { path, one, other, share } of found) {
      if (share === Number.POSITIVE_INFINITY)
        engine.decisions.push(`${take.name} ${path}: ${one} and ${other}`);
      else {
        const stroke = path.startsWith('/strokes/time/') ? 0 : path.startsWith('/strokes/levelDb/') ? 1 : 2;
        const size = stroke === 2 ? share : Math.abs((one as number) - (other as number));
        const most = engine.most.get(sorts[stroke])!;
        if (size > most.size) engine.most.set(sorts[stroke], { size, at: `${take.name} ${path}` });
      }
    }
  }
  console.warn(
    take.name,
    ...others.map(({ most, decisions }) => [most.get(sorts[2])!.size, decisions.length]),
  );
}
await browser.close();
served.close();
rmSync(folder, { recursive: true });

const rows = others.map(({ name, most, decisions, alike }) => [
  name,
  String(alike),
  String(decisions.length),
  ...sorts.map((sort) => {
    const { size, at } = most.get(sort)!;
    return size === 0 ? '0' : `${size.toExponential(1)} (${at})`;
  }),
]);
const text = `# The same takes on other engines

\`npx tsx tests/bench/engines.ts ${seed}${process.argv[3] === undefined ? '' : ` '${process.argv[3]}'`}\`: ${takes.length} rendered takes of different kinds (${takes.map(({ name }) => name).join(', ')}), graded by the built program with Node
${process.versions.node} and by the others, and the whole results held against each other. Decisions are texts, whole numbers, states
and lengths: strokes, their slots and classes, scores' words, advice. "Share" is of the greater of the figure and a
thousandth of its unit. Sines, exponentials and logarithms differ in their last bits between versions of the engine.

${markdownTable(['engine', 'results alike to the last bit', 'decisions that differ', ...sorts.map((sort) => `most in ${sort}`)], rows)}
${others.flatMap(({ name, decisions }) => decisions.slice(0, 20).map((one) => `\n- ${name}: ${one}`)).join('')}`;
writeFileSync(join(root, 'reports/engines.md'), text);
console.log(text);
process.exitCode = others.some(({ decisions }) => decisions.length > 0) ? 1 : 0;

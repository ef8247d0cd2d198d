import { readFileSync, writeFileSync } from 'node:fs';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario, scenarioNames, scenarios } from '../../fixtures/generator/scenarios.ts';
import { programPath } from '../programs.ts';
import { checkTakeSpec, reportTakes } from './check-takes.ts';
import { damages } from './damages.ts';
import { gradedThrough } from './grading-chains.ts';
import { gradeBothWays, harmDone } from './harm-done.ts';
import { figure, markdownTable } from './markdown-table.ts';
import { recordingChains } from './recording-chains.ts';

/**
 * How often the check of a recording finds a damage, how often it finds one in a clean take, and what it refuses, on takes
 * whose surfaces, rooms, exercises and seeds set no threshold: `tsx tests/bench/recording-check.ts [SEEDS [DAMAGES [EVERY]]]`,
 * seeds with commas between them.
 */
const [seedText = '41', pattern = '.', everyText = '1'] = process.argv.slice(2);
const seeds = seedText!.split(',').map(Number);
const wanted = new RegExp(pattern);
/** Every strength, or every second one from the strongest down. */
const every = Number(everyText);
const ffmpeg = programPath('ffmpeg');

const share = (n: number, of: number) => `${figure((100 * n) / of, 0)} %`;

const cleanTakes = seeds.flatMap((seed) =>
  reportTakes.map((take) => {
    const { sheet, spec } = checkTakeSpec(take, seed);
    const { samples, sampleRate } = renderTake(spec);
    return { take, seed, sheet, spec, samples, sampleRate, ...gradeBothWays(samples, sampleRate, sheet) };
  }),
);

/** More wrong figures than this spoil a take: one or two of 33 leave their interval of 95 % by themselves. */
const mostWrong = 2;
const pooled = new Map<string, { spoilt: number; found: number }>();

const rows = damages
  .filter(({ name }) => wanted.test(name))
  .flatMap(({ name, toldBy, strengths }) =>
    strengths
      .filter((_, i) => (strengths.length - 1 - i) % every === 0)
      .map(({ label, spec: changed, spoil }) => {
        const sum = { wrong: 0, told: 0, inVain: 0, gone: 0 };
        let [found, spoilt, spoiltFound, graded] = [0, 0, 0, 0];
        for (const clean of cleanTakes) {
          const { samples, sampleRate } =
            changed === undefined ? clean : renderTake({ ...clean.spec, ...changed(clean.spec) });
          const damaged = spoil === undefined ? samples : spoil(samples, sampleRate, clean.seed);
          const one = gradeBothWays(damaged, sampleRate, clean.sheet);
          const isFound = one.codes.some((code) => toldBy.includes(code));
          if (isFound) found += 1;
          if (one.plain.grading.state !== 'graded') continue;
          graded += 1;
          const harm = harmDone(clean.plain, one);
          if (harm.wrong > mostWrong) spoilt += 1;
          if (harm.wrong > mostWrong && isFound) spoiltFound += 1;
          for (const key of ['wrong', 'told', 'inVain', 'gone'] as const) sum[key] += harm[key];
        }
        const all = pooled.get(name) ?? { spoilt: 0, found: 0 };
        pooled.set(name, { spoilt: all.spoilt + spoilt, found: all.found + spoiltFound });
        const n = cleanTakes.length;
        const row = [
          `${name}, ${label}`,
          share(found, n),
          String(n - graded),
          spoilt === 0 ? '0' : `${spoilt}, ${spoiltFound} found`,
          ...(['wrong', 'told', 'inVain', 'gone'] as const).map((key) =>
            figure(sum[key] / Math.max(1, graded), 1),
          ),
        ];
        console.log(row.join(' | '));
        return row;
      }),
  );

/** What the check refuses of the same playing through whole ways of recording. */
const refusedBy = recordingChains
  .filter(({ codec }) => codec === undefined || ffmpeg !== undefined)
  .filter(() => pattern === '.')
  .map((chain) => {
    const counts = seeds.map((one) => {
      const result = gradedThrough(chain, one, ffmpeg)!;
      const reasons = result.measures.flatMap(({ scope, outcome }) =>
        Object.keys(scope).length === 0 && outcome.state === 'not-measurable' ? [outcome.reason.code] : [],
      );
      return reasons.filter((code) => code.startsWith('spoiled-'));
    });
    const codes = [...new Set(counts.flat())].map((code) => code.slice('spoiled-'.length));
    return [chain.name, figure(counts.flat().length / counts.length, 1), codes.join(', ') || 'none'];
  });

/** What a scenario has by its nature, which isn't a false alarm. */
const innate = (name: ScenarioName): readonly string[] => {
  const own: Readonly<Record<string, readonly string[]>> = {
    'noise-room-40': ['noisy', 'taps-near-noise'],
    laptop: ['clipped'],
    'gain-control': ['gain-control'],
    gate: ['gated'],
    clipping: ['clipped'],
    buzz: ['short-take'],
    'stick-count-in': ['stick-clicks'],
  };
  return [...(own[name] ?? []), ...(scenarios[name].group === 'click' ? ['click-loud'] : [])];
};
const alarms = new Map<string, string[]>();
const kinds = pattern === '.' ? scenarioNames : [];
const takes = kinds.flatMap((name) => seeds.map((seed) => ({ name, seed })));
for (const { name, seed } of takes) {
  const { sheet, spec } = scenario(name, seed);
  const { samples, sampleRate } = renderTake(spec);
  for (const { code, spoils } of gradeBothWays(samples, sampleRate, sheet).result.recording.check ?? [])
    if (!innate(name).includes(code))
      alarms.set(code, [
        ...(alarms.get(code) ?? []),
        `${name} ${seed}${spoils.length > 0 ? ' (refuses)' : ''}`,
      ]);
}
for (const { take, seed, codes } of cleanTakes)
  for (const code of codes)
    if (!(code === 'click-loud' && take.name.includes('click')))
      alarms.set(code, [...(alarms.get(code) ?? []), `${take.name} ${seed}`]);
const cleanCount = takes.length + cleanTakes.length;

const head = ['damage', 'found', 'without a grade', 'spoilt', 'wrong', 'told', 'in vain', 'gone'];
const figures = Math.round(
  cleanTakes.reduce((sum, one) => sum + harmDone(one.plain, one).figures, 0) / cleanTakes.length,
);
const rates = [...pooled].map(([name, { spoilt, found }]) => [
  name,
  String(spoilt),
  spoilt === 0 ? '–' : share(found, spoilt),
]);
const text = `# Check of the recording

\`npx tsx tests/bench/recording-check.ts ${seedText} . ${every}\`, on ${cleanTakes.length} takes, ${seeds.length} of each kind that set no threshold:
${reportTakes.map(({ name }) => name).join('; ')}. Thresholds were set on other surfaces, rooms, exercises and seeds.

A damage that makes nothing wrong needn't be found. *spoilt*: takes in which more than ${mostWrong} of about ${figures} figures of the
whole take would be wrong, outside the clean recording's interval, if nothing were refused; and in how many of these a
finding of the damage stands.

## Takes that a damage spoils

${markdownTable(['damage', 'spoilt, at all strengths', 'found'], rates)}

## Every damage and strength

*found*: takes in which a finding of this damage stands. Figures a take, of those with a grade: *wrong* if nothing were
refused; of these *told* all the same; *in vain*, refused though right; *gone*, not there for another reason.

${markdownTable(head, rows)}

## Refusals by way of recording

The same playing (108 strokes at 110 BPM, ${seeds.length} players) through whole ways of recording; figures of the whole take that the
check refuses, and what for.

${markdownTable(['recorded', 'refused a take', 'for'], refusedBy)}

## False alarms

${cleanCount} clean takes: ${kinds.length} scenarios, each with ${seeds.length} seeds, and the takes above before they were damaged. ${
  alarms.size === 0
    ? 'None had a finding but what belongs to it.'
    : `${[...alarms].map(([code, where]) => `\`${code}\` in ${where.length}: ${where.join(', ')}`).join('; ')}.`
}
`;
if (pattern === '.') {
  const path = new URL('../../reports/recording-check.md', import.meta.url);
  // What was tried is written by hand and stays.
  const byHand = readFileSync(path, 'utf8').split(/^(?=## What was tried)/m)[1] ?? '';
  writeFileSync(path, byHand === '' ? text : `${text}\n${byHand}`);
} else console.log(text);

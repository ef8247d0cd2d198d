import { writeFileSync } from 'node:fs';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario, scenarioNames, scenarios } from '../../fixtures/generator/scenarios.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { isForExport } from '../../src/core/result/names.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { findMeasure } from '../../src/core/scoring/find-measure.ts';
import { memorySource } from './bench-take.ts';
import { checkTakeSpec, reportTakes } from './check-takes.ts';
import { movedBy } from './compare-results.ts';
import { damages } from './damages.ts';
import { figure, markdownTable } from './markdown-table.ts';

/**
 * How often the check of a recording finds a damage, how often it finds one in a clean take, and what it refuses, on takes
 * whose surfaces, rooms, exercises and seeds set no threshold: `tsx tests/bench/recording-check.ts [SEED [DAMAGES [EVERY]]]`.
 */
const [seedText = '41', pattern = '.', everyText = '1'] = process.argv.slice(2);
const seed = Number(seedText);
const wanted = new RegExp(pattern);
/** Every strength, or every second one from the strongest down. */
const every = Number(everyText);

interface Graded {
  readonly result: TakeResult;
  readonly codes: readonly string[];
}

function grade(samples: Float32Array, sampleRate: number, sheet: Sheet): Graded {
  const result = gradeTake(memorySource(samples, sampleRate), sheet, { name: 'take.wav' });
  return { result, codes: (result.recording.check ?? []).map(({ code }) => code) };
}

/** Figures of the whole take that were told of the clean recording: wrong here, refused by the check, gone otherwise. */
function harmDone(clean: TakeResult, { grading, measures }: TakeResult) {
  const harm = { told: 0, wrong: 0, refused: 0, gone: 0 };
  for (const { id, scope, unit, outcome } of clean.measures) {
    if (outcome.state !== 'measured' || Object.keys(scope).length > 0 || isForExport(id)) continue;
    harm.told += 1;
    const other = grading.state === 'graded' ? findMeasure(measures, id, scope)?.outcome : undefined;
    if (other?.state === 'measured') {
      const moved = Math.abs(movedBy({ id, scope, unit, clean: outcome, other }));
      if (moved > 1 && Math.abs(other.value - outcome.value) > 1e-6) harm.wrong += 1;
    } else if (other?.state === 'not-measurable' && other.reason.code.startsWith('spoiled-'))
      harm.refused += 1;
    else if (other?.state !== 'not-applicable') harm.gone += 1;
  }
  return harm;
}

const share = (n: number, of: number) => `${figure((100 * n) / of, 0)} %`;

const cleanTakes = reportTakes.map((take) => {
  const { sheet, spec } = checkTakeSpec(take, seed);
  const { samples, sampleRate } = renderTake(spec);
  return { take, sheet, spec, samples, sampleRate, ...grade(samples, sampleRate, sheet) };
});

const rows = damages
  .filter(({ name }) => wanted.test(name))
  .flatMap(({ name, toldBy, strengths }) =>
    strengths
      .filter((_, i) => (strengths.length - 1 - i) % every === 0)
      .map(({ label, spec: changed, spoil }) => {
        const sum = { told: 0, wrong: 0, refused: 0, gone: 0 };
        let [told, harmed, harmedSilently, ungraded] = [0, 0, 0, 0];
        for (const clean of cleanTakes) {
          const { samples, sampleRate } =
            changed === undefined ? clean : renderTake({ ...clean.spec, ...changed(clean.spec) });
          const damaged = spoil === undefined ? samples : spoil(samples, sampleRate, seed);
          const { result, codes } = grade(damaged, sampleRate, clean.sheet);
          const found = codes.some((code) => toldBy.includes(code));
          const harm = harmDone(clean.result, result);
          const isGraded = result.grading.state === 'graded';
          const harms = isGraded && harm.wrong + harm.refused + harm.gone > 2;
          if (found) told += 1;
          if (!isGraded) ungraded += 1;
          if (harms) harmed += 1;
          if (harms && !found && harm.wrong > 2) harmedSilently += 1;
          for (const key of ['told', 'wrong', 'refused', 'gone'] as const)
            sum[key] += isGraded || key === 'told' ? harm[key] : 0;
        }
        const n = cleanTakes.length;
        const row = [
          `${name}, ${label}`,
          share(told, n),
          String(ungraded),
          String(harmed),
          String(harmedSilently),
          ...(['wrong', 'refused', 'gone'] as const).map((key) => figure(sum[key] / n, 1)),
        ];
        console.log(row.join(' | '));
        return row;
      }),
  );

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
for (const name of kinds) {
  const { sheet, spec } = scenario(name, seed);
  const { samples, sampleRate } = renderTake(spec);
  for (const { code, spoils } of grade(samples, sampleRate, sheet).result.recording.check ?? [])
    if (!innate(name).includes(code))
      alarms.set(code, [...(alarms.get(code) ?? []), `${name}${spoils.length > 0 ? ' (refuses)' : ''}`]);
}
for (const { take, codes } of cleanTakes)
  for (const code of codes)
    if (!(code === 'click-loud' && take.name.includes('click')))
      alarms.set(code, [...(alarms.get(code) ?? []), take.name]);
const cleanCount = kinds.length + cleanTakes.length;

const head = [
  'damage',
  'found',
  'without a grade',
  'harmed',
  'harmed, not found',
  'wrong',
  'refused',
  'gone',
];
const text = `# Check of the recording

\`npx tsx tests/bench/recording-check.ts ${seed} . ${every}\`, on ${cleanTakes.length} kinds of take that set no threshold:
${reportTakes.map(({ name }) => name).join('; ')}. Thresholds were set on other surfaces, rooms, exercises and seeds.

*found*: takes in which a finding of this damage stands. *harmed*: graded takes in which more than two figures of the whole
take are wrong (outside the clean recording's interval), refused or gone; *not found*: of these, those with more than two
wrong figures and no finding. *wrong*, *refused* (by the check), *gone* (for another reason): figures a take, of about
${Math.round(cleanTakes.reduce((sum, one) => sum + harmDone(one.result, one.result).told, 0) / cleanTakes.length)}.

${markdownTable(head, rows)}

## False alarms

${cleanCount} clean takes: ${kinds.length} scenarios and the takes above before they were damaged. ${
  alarms.size === 0
    ? 'None had a finding but what belongs to it.'
    : [...alarms].map(([code, where]) => `\`${code}\` in ${where.length}: ${where.join(', ')}`).join('; ')
}
`;
if (pattern === '.') writeFileSync(new URL('../../reports/recording-check.md', import.meta.url), text);
else console.log(text);

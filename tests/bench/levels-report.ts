import type { LevelCandidate } from './level-candidates.ts';
import type { LevelErrors } from './level-errors.ts';
import { figure, markdownTable } from './markdown-table.ts';
import type { RecordingChain } from './recording-chains.ts';

/** Chains that change levels by themselves and are left out of what is worst. */
const unfaithful: readonly string[] = ['gain control', 'clipping'];
const fairDb = 0.3;

/** The text of reports/levels.md; `errors` by chain, then by candidate. */
export function levelsReport(
  chains: readonly RecordingChain[],
  errors: readonly (readonly LevelErrors[])[],
  candidates: readonly LevelCandidate[],
  seeds: readonly number[],
): string {
  const table = (value: (one: LevelErrors) => number) =>
    markdownTable(
      ['way of measuring', ...chains.map(({ name }) => name)],
      candidates.map(({ name }, c) => [name, ...errors.map((chain) => figure(value(chain[c]!), 2))]),
    );
  const summary = candidates.map(({ name }, c) => {
    const faithful = errors.flatMap((chain, i) => (unfaithful.includes(chains[i]!.name) ? [] : [chain[c]!]));
    const most = (value: (one: LevelErrors) => number) =>
      Math.max(...faithful.map((one) => Math.abs(value(one))));
    const mean = (value: (one: LevelErrors) => number) =>
      faithful.reduce((sum, one) => sum + Math.abs(value(one)), 0) / faithful.length;
    const fair = faithful.filter((one) => Math.abs(one.afterAccentDb) <= fairDb).length;
    return [
      name,
      ...[
        mean((one) => one.ratioDb),
        most((one) => one.ratioDb),
        mean((one) => one.afterAccentDb),
        most((one) => one.afterAccentDb),
      ].map((value) => figure(value, 2)),
      `${fair} of ${faithful.length}`,
      ...[mean((one) => one.spreadDb), most((one) => one.spreadDb), faithful[0]!.definitionDb].map((value) =>
        figure(value, 2),
      ),
    ];
  });
  return `# Ways to measure a stroke's level

The same playing (triplets at 126 BPM, accents at −9 dBFS, taps 16 dB under them, scatter of 1.2 and 1.8 dB) through
recording chains, seeds ${seedsNamed(seeds)}. Each level is measured at the true onset and held against the same way of measuring
on the stroke alone, dry; the constant part of each chain is taken off. All in dB. Nearly all ways look at 150 Hz to
3 kHz; "tail off" means that the ringing of the stroke before is extrapolated and subtracted.

The ways were made up before these takes were looked at but for those that take a share of the miss off, so small
differences among those say little. "Miss": what the extrapolation leaves of the tail, judged by how far the same
extrapolation is off just before the stroke.

Made by \`npm run bench\` or \`npx tsx tests/bench/levels.ts [seeds]\`.

## All chains but ${unfaithful.join(' and ')}

Ratio: error of the accent-to-tap ratio. After an accent: taps there against other taps, when they are alike. Spread: 95 %
of strokes lie within it. Definition: the accent-to-tap ratio of this way less that of the peaks, dry.

${markdownTable(
  [
    'way of measuring',
    ...['ratio, mean', 'ratio, worst', 'after an accent, mean', 'worst', `within ${fairDb}`],
    ...['spread, mean', 'worst', 'definition'],
  ],
  summary,
)}

## Error of the accent-to-tap ratio

${table((one) => one.ratioDb)}

## Taps after accents against other taps

${table((one) => one.afterAccentDb)}

## Spread: 95 % of strokes lie within

${table((one) => one.spreadDb)}
`;
}

/** A run of seeds by its ends, others one by one. */
function seedsNamed(seeds: readonly number[]): string {
  const run = seeds.length > 2 && seeds.every((seed, i) => seed === seeds[0]! + i);
  return run ? `${seeds[0]} to ${seeds.at(-1)}` : seeds.join(', ');
}

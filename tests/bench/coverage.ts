/**
 * How often the intervals of simulated takes hold the truth, by player, length and measure. `tsx tests/bench/coverage.ts
 * [takes]` writes reports/coverage.md.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { measures } from '../../src/core/measures/index.ts';
import type { Scope } from '../../src/core/result/take-result.ts';
import { type Player, players, simulatedPerformance } from '../core/measures/simulated-performance.ts';
import { longRunSpread } from './long-run-spread.ts';
import { figure, markdownTable } from './markdown-table.ts';

const takes = Number(process.argv[2] ?? 200);
/** Doubles in it, so that the hands stay told after a missed stroke. */
const notation = '>RLR >RLR >LRL >LRL';
const places = [0, -0.005, 0.004];
const meanPlace = places.reduce((sum, place) => sum + place, 0) / places.length;
const handApart = 0.004;
const habit = ({ partial, hand }: { readonly partial: number; readonly hand: string }) =>
  places[partial - 1]! + (hand === 'L' ? handApart / 2 : -handApart / 2);

interface Row {
  readonly name: string;
  readonly id: string;
  readonly scope: Scope;
  readonly truth: (player: Player) => number;
}

const spreads = new Map(Object.values(players).map((player) => [player, longRunSpread(player)]));
const rows: readonly Row[] = [
  { name: 'timing spread', id: 'timing-spread', scope: {}, truth: (player) => spreads.get(player)! },
  ...[2, 3].map((partial) => ({
    name: `place of partial ${partial}`,
    id: 'placement',
    scope: { partial },
    truth: () => (places[partial - 1]! - meanPlace) * 1000,
  })),
  { name: 'left against right', id: 'hand-offset', scope: {}, truth: () => handApart * 1000 },
  { name: 'tempo against the one asked', id: 'tempo-error', scope: {}, truth: () => 0 },
  { name: 'tempo from start to end', id: 'tempo-change', scope: {}, truth: () => 0 },
  { name: 'accent-to-tap ratio', id: 'accent-to-tap-ratio', scope: {}, truth: () => 12 },
  { name: 'the same, right hand', id: 'accent-to-tap-ratio', scope: { hand: 'R' }, truth: () => 12 },
  { name: 'spread of taps', id: 'tap-spread', scope: {}, truth: () => 1.5 },
  { name: 'spread of accents', id: 'accent-spread', scope: {}, truth: () => 1.5 },
];
const used = measures.filter(({ id }) => rows.some((row) => row.id === id));

/** Shares of takes whose interval holds the truth, % with the mean half-width, row by row. */
function column(player: Player, repeats: number, faults: boolean): string[] {
  const tally = rows.map(() => ({ held: 0, told: 0, width: 0 }));
  for (let seed = 1; seed <= takes; seed++) {
    const take = simulatedPerformance({
      sheet: `tempo: 111.111\n${notation}; x${repeats}`,
      seed,
      player,
      habit,
      levelMemory: 0.3,
      missedShare: faults ? 0.01 : 0,
      strayShare: faults ? 0.005 : 0,
    });
    const results = used.flatMap((measure) => measure.compute(take));
    rows.forEach(({ id, scope, truth }, r) => {
      const wanted = JSON.stringify(scope);
      const outcome = results.find((one) => one.id === id && JSON.stringify(one.scope) === wanted)?.outcome;
      if (outcome?.state !== 'measured') return;
      const value = truth(player);
      tally[r]!.told++;
      tally[r]!.width += (outcome.high - outcome.low) / 2;
      if (outcome.low <= value && value <= outcome.high) tally[r]!.held++;
    });
  }
  return tally.map(({ held, told, width }) => {
    if (told === 0) return '–';
    const refused = told < takes ? `, ${takes - told} refused` : '';
    return `${figure((100 * held) / told, 1)} (±${figure(width / told, 2)}${refused})`;
  });
}

const names = Object.keys(players);
const sections = [false, true].flatMap((faults) =>
  [4, 12, 40].map((repeats) => {
    const columns = Object.values(players).map((player) => column(player, repeats, faults));
    const title = `## ${repeats * 12} strokes, ${faults ? '1 % missed and 0.5 % of them 40 ms off' : 'nothing missed'}`;
    console.log(title);
    const table = markdownTable(
      ['measure', ...names],
      rows.map(({ name }, r) => [name, ...columns.map((cells) => cells[r]!)]),
    );
    return `${title}\n\n${table}\n`;
  }),
);
const error = (share: number) => figure(100 * Math.sqrt((share * (1 - share)) / takes), 1);
mkdirSync('reports', { recursive: true });
writeFileSync(
  'reports/coverage.md',
  `# Intervals that hold the truth

Share of simulated takes, %, whose 95 % interval holds what the player was made with; in brackets the mean half of the
interval (ms, dB or % of the tempo). ${takes} takes in a cell: a share of 95 % is known to ±${error(0.95)} points (one standard error).
Line: \`${notation}\` in triplets at 111.1, with habits: partials 0, −5 and +4 ms, left 4 ms after right, accents 12 dB over taps,
levels that scatter by 1.5 dB. Players: strokes scatter by 8 ms each on their own; three who correct a tenth, three and six
tenths of each deviation (timekeeper 5 ms, movement 4 ms); one without a click (4 and 4 ms). The same seeds in every cell of a
row, so that its columns aren't independent. Strokes are taken as found and aligned: errors of finding them are added,
errors of aligning them are not.

Made by \`npx tsx tests/bench/coverage.ts ${takes}\`.

${sections.join('\n')}`,
);

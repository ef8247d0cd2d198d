/**
 * How often the intervals of simulated takes hold the truth, by player, length and measure. `tsx tests/bench/coverage.ts
 * [takes]` writes reports/coverage.md.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { players } from '../core/measures/simulated-performance.ts';
import { faultShares, rowSets, type Tally, tallies } from './coverage-rows.ts';
import { figure, markdownTable } from './markdown-table.ts';

const takes = Number(process.argv[2] ?? 400);
const lengths = [48, 144, 480];
const names = Object.keys(players);

const told: { readonly place: string; readonly tally: Tally }[] = [];
function cellOf(tally: Tally, place: string): string {
  if (tally.told === 0) return '–';
  told.push({ place, tally });
  const refused = tally.told < takes ? `, ${takes - tally.told} refused` : '';
  return `${figure(100 * tally.held, 1)} (±${figure(tally.meanHalf, 2)}${refused})`;
}

const sections = [false, true].flatMap((faults) =>
  lengths.map((strokes) => {
    const title = `## ${strokes} strokes, ${faults ? '1 % missed and 0.5 % of them 40 ms off' : 'nothing missed'}`;
    const rows = rowSets.flatMap((set) => {
      const columns = Object.entries(players).map(([name, player], p) =>
        tallies(set, player, { strokes, faults, takes, firstSeed: 1 + 10_000 * p }).map((tally) =>
          cellOf(tally, `${name}, ${strokes} strokes, ${faults ? 'with faults' : 'clean'}`),
        ),
      );
      return set.rows.map(({ name, truth }, r) => [
        truth === 'own' ? `${name} *` : name,
        ...columns.map((cells) => cells[r]!),
      ]);
    });
    console.log(title);
    return `${title}\n\n${markdownTable(['measure', ...names], rows)}\n`;
  }),
);

const error = (share: number) => figure(100 * Math.sqrt((share * (1 - share)) / takes), 1);
/** Coverage that is called short or long: outside 92 to 97.5 % by more than two standard errors. */
const bounds = { least: 0.92, most: 0.975 };
const off = (share: number) => 2 * Math.sqrt((share * (1 - share)) / takes);
const inRange = told.filter(({ tally }) => tally.held >= bounds.least && tally.held <= bounds.most).length;
const list = (items: typeof told) =>
  items.length === 0
    ? 'None.'
    : items
        .map(({ place, tally }) => `- ${tally.row.name}: ${figure(100 * tally.held, 1)} % (${place})`)
        .join('\n');
const short = told.filter(({ tally }) => tally.held < bounds.least - off(bounds.least));
const long = new Map<string, number>();
for (const { tally } of told) {
  if (tally.held > bounds.most + off(bounds.most))
    long.set(tally.row.name, (long.get(tally.row.name) ?? 0) + 1);
}

mkdirSync('reports', { recursive: true });
writeFileSync(
  'reports/coverage.md',
  `# Intervals that hold the truth

Share of simulated takes, %, whose 95 % interval holds what the player was made with; in brackets the mean half of the
interval (ms, dB, share in % or % of the tempo). ${takes} takes in a cell: a share of 95 % is known to ±${error(0.95)} points (one
standard error). With a star: there is no closed form for the truth, and the mean of all takes of the cell stands in for
it, so that a bias doesn't show.

Lines, in triplets at 111.1: \`${rowSets[0]!.notation}\`, and for the last ${rowSets[1]!.rows.length} rows \`${rowSets[1]!.notation}\`. Habits: partials
0, −5 and +4 ms, left 4 ms after right, accents 12 dB over taps, levels that scatter by 1.5 dB, three tenths of their variance
fading slowly. Players: strokes scatter by 8 ms each on their own; three who correct a tenth, three and six tenths of each
deviation (timekeeper 5 ms, movement 4 ms); one without a click (4 and 4 ms). Faults: ${100 * faultShares.missedShare} % of the strokes missed,
${100 * faultShares.strayShare} % 40 ms off. Every player has seeds of their own; lengths and
faults share them. Strokes are taken as
found and aligned: errors of finding them are added, errors of aligning them are not.

Made by \`npx tsx tests/bench/coverage.ts ${takes}\`.

${inRange} of ${told.length} cells lie from 92 to 97.5 %.

Short by more than two standard errors:

${list(short)}

Wider than they need be, over 97.5 % by more than two standard errors, with the number of cells of ${lengths.length * 2 * names.length}:

${[...long].map(([name, cells]) => `- ${name}: ${cells}`).join('\n') || 'None.'}

${sections.join('\n')}`,
);

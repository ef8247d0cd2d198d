import { measureName } from '../../src/core/result/names.ts';
import { type Comparison, movedBy } from './compare-results.ts';
import { figure, markdownTable } from './markdown-table.ts';

/** One chain's comparisons, one a seed; null where ffmpeg is missing. */
export interface ChainRow {
  readonly name: string;
  readonly comparisons: readonly Comparison[] | null;
}

const columns = ['overall', 'evenness', 'shape', 'dynamics', 'hands', 'steadiness', 'completeness'];
export const mostPoints = 3;

/** The largest change of a score over the takes, whatever its sign; NaN where it is missing in one of them. */
export function mostChange(comparisons: readonly Comparison[], id: string): number {
  return comparisons.reduce((most, { points }) => {
    const change = Math.abs(points[id] ?? Number.NaN);
    return Number.isNaN(most) || Number.isNaN(change) ? Number.NaN : Math.max(most, change);
  }, 0);
}

/** The text of reports/chains.md. */
export function chainsReport(rows: readonly ChainRow[], seeds: readonly number[]): string {
  const there = rows.flatMap(({ name, comparisons }) => (comparisons ? [{ name, comparisons }] : []));
  const missing = rows.filter(({ comparisons }) => comparisons === null).map(({ name }) => name);
  const summary = there.map(({ name, comparisons }) => {
    const figures = comparisons.flatMap((one) => one.figures);
    const within = figures.filter((pair) => Math.abs(movedBy(pair)) <= 1).length;
    const sum = (value: (one: Comparison) => number) => comparisons.reduce((n, one) => n + value(one), 0);
    const agrees = columns.every((id) => mostChange(comparisons, id) <= mostPoints);
    return [
      name,
      ...columns.map((id) => figure(mostChange(comparisons, id), 1)),
      agrees ? 'yes' : 'no',
      `${within} of ${figures.length}`,
      String(sum((one) => one.refused.length)),
      `${sum((one) => one.lost)}, ${sum((one) => one.gained)}`,
    ];
  });
  const list = (items: readonly string[]) =>
    items.length > 0 ? items.map((item) => `- ${item}`).join('\n') : 'None.';
  const outside = there.flatMap(({ name, comparisons }) =>
    comparisons.flatMap((one, i) =>
      one.figures
        .filter((pair) => Math.abs(movedBy(pair)) > 1)
        .map(
          ({ id, scope, unit, clean, other }) =>
            `${name}, seed ${seeds[i]}: ${measureName(id)}${partOf(scope)} ${figure(clean.value, 2)} (${figure(clean.low, 2)} to ${figure(clean.high, 2)}) → ${figure(other.value, 2)} ${unit}`,
        ),
    ),
  );
  const refused = there.flatMap(({ name, comparisons }) =>
    comparisons.flatMap((one, i) => one.refused.map((what) => `${name}, seed ${seeds[i]}: ${what}`)),
  );
  return `# The same playing through recording chains

Each take (108 strokes at 110 BPM; odd seeds with habits of partial and hand, even ones without) was played once and
recorded in several ways; seeds ${seeds.join(', ')}. A grade should speak of the playing, not of the recording: every score is
to stay within ${mostPoints} points of the clean recording's, every figure inside its 95 % interval.

Made by \`npm run bench\` or \`npx tsx tests/bench/chains.ts [seeds]\`.${missing.length > 0 ? `\n\n**Left out, as ffmpeg is not installed: ${missing.join('; ')}.**` : ''}

Points by which a score differs at most from the clean recording's (– where one of them has none); figures inside the
clean recording's interval; figures that the clean recording gives and this one doesn't; strokes on written places lost
and gained against it.

${markdownTable(['chain', ...columns, `all within ${mostPoints}`, 'figures inside', 'refused', 'lost, gained'], summary)}

## Figures outside the clean recording's interval

${list(outside)}

## Figures that only the clean recording gives

${list(refused)}
`;
}

const partOf = (scope: object) => {
  const parts = Object.entries(scope).map(([key, value]) => `${key} ${value}`);
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
};

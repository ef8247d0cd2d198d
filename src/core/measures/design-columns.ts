import type { Hand } from '../exercise/sheet.ts';
import type { AccentPlace, PlayedStroke } from './played-stroke.ts';

/** A term of the timing model: one value a stroke. */
interface DesignColumn {
  readonly id: string;
  readonly values: Float64Array;
}

export const partialColumn = (divisions: number, partial: number): string =>
  `partial ${partial} of ${divisions}`;
export const placeColumn = (place: AccentPlace): string => `place ${place}`;
export const handColumn = 'left hand';
export const changeColumn = 'change of hands';

/** Order in which the places of accents are fitted; the last of those that add up to the rest is left out. */
const places: readonly AccentPlace[] = ['on', 'after', 'before', 'other'];

/** Doubts about hands that get a term of their own, the longest first: more would cost more than they mend. Our judgement. */
const mostDoubts = 12;

/** The longest doubts of a take. */
function longestDoubts(strokes: readonly PlayedStroke[]): number[] {
  const lengths = new Map<number, number>();
  for (const { doubt } of strokes) if (doubt !== null) lengths.set(doubt, (lengths.get(doubt) ?? 0) + 1);
  return [...lengths]
    .sort((a, b) => b[1] - a[1] || a[0] - b[0])
    .slice(0, mostDoubts)
    .map(([doubt]) => doubt);
}

const side = (hand: Hand) => (hand === 'L' ? 0.5 : -0.5);

/** A column less its mean over each line: lines may differ in how much of a habit they show, not in when they start. */
function centredByLine(strokes: readonly PlayedStroke[], values: Float64Array): Float64Array {
  const sums = new Map<number, { sum: number; n: number }>();
  strokes.forEach(({ slot }, i) => {
    const { sum, n } = sums.get(slot.line) ?? { sum: 0, n: 0 };
    sums.set(slot.line, { sum: sum + values[i]!, n: n + 1 });
  });
  return values.map((value, i) => {
    const { sum, n } = sums.get(strokes[i]!.slot.line)!;
    return value - sum / n;
  });
}

/** Partials played in each division of the beat. */
function partialsByDivision(strokes: readonly PlayedStroke[]): Map<number, number[]> {
  const found = new Map<number, Set<number>>();
  for (const { slot } of strokes) {
    const partials = found.get(slot.divisions) ?? new Set();
    found.set(slot.divisions, partials.add(slot.partial));
  }
  const ascending = (a: number, b: number) => a - b;
  return new Map([...found].map(([divisions, partials]) => [divisions, [...partials].sort(ascending)]));
}

/**
 * Columns of the additive model, the most telling first: where terms can't be told apart, the earlier one speaks for
 * both. Partials count against the mean of their division. Left is +½ and right −½, so that the hand's coefficient is
 * left minus right. Strokes whose hand is open get the written hand in a term of their own, of either sign, so that the
 * hands' habit doesn't pass for scatter.
 */
export function designColumns(strokes: readonly PlayedStroke[]): DesignColumn[] {
  const columns: DesignColumn[] = [];
  const column = (value: (stroke: PlayedStroke) => number) => Float64Array.from(strokes, value);
  for (const [divisions, partials] of partialsByDivision(strokes)) {
    for (const partial of partials) {
      const own = (s: PlayedStroke) => (s.slot.partial === partial ? 1 : 0) - 1 / partials.length;
      const values = column((s) => (s.slot.divisions === divisions ? own(s) : 0));
      columns.push({ id: partialColumn(divisions, partial), values });
    }
  }
  columns.push({ id: handColumn, values: column((s) => (s.hand === null ? 0 : side(s.hand))) });
  for (const doubt of longestDoubts(strokes)) {
    const values = column((s) => (s.doubt === doubt ? side(s.slot.hand) : 0));
    columns.push({ id: `${handColumn}, doubt ${doubt}`, values });
  }
  for (const place of places) {
    const values = column((s) => (s.place === place ? 1 : 0));
    columns.push({ id: placeColumn(place), values: centredByLine(strokes, values) });
  }
  const known = strokes.filter((s) => s.handChange !== null);
  const share = known.filter((s) => s.handChange).length / Math.max(1, known.length);
  const changes = column((s) => (s.handChange === null ? share : s.handChange ? 1 : 0));
  columns.push({ id: changeColumn, values: centredByLine(strokes, changes) });
  return columns;
}

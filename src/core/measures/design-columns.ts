import type { Hand } from '../exercise/sheet.ts';
import type { AccentPlace, PlayedStroke } from './played-stroke.ts';

/** A term of the timing model: one value a stroke. */
export interface DesignColumn {
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

/** Doubts about hands that get a term of their own, the longest first: more would cost more than they mend. */
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

/**
 * Columns of the additive model, the most telling first: where terms can't be told apart, the earlier one speaks for
 * both. Left is +½ and right −½, so that the hand's coefficient is left minus right. Strokes whose hand is open get
 * the written hand in a term of their own, of either sign, so that the hands' habit doesn't pass for scatter.
 */
export function designColumns(strokes: readonly PlayedStroke[]): DesignColumn[] {
  const columns: DesignColumn[] = [];
  const add = (id: string, value: (stroke: PlayedStroke) => number) =>
    columns.push({ id, values: Float64Array.from(strokes, value) });
  const classes = new Map<string, (stroke: PlayedStroke) => number>();
  const sorted = [...strokes].sort(
    (a, b) => a.slot.divisions - b.slot.divisions || a.slot.partial - b.slot.partial,
  );
  for (const { slot } of sorted) {
    const { divisions, partial } = slot;
    classes.set(partialColumn(divisions, partial), (s) =>
      s.slot.divisions === divisions && s.slot.partial === partial ? 1 : 0,
    );
  }
  for (const [id, value] of classes) add(id, value);
  add(handColumn, (s) => (s.hand === null ? 0 : side(s.hand)));
  for (const doubt of longestDoubts(strokes)) {
    add(`${handColumn}, doubt ${doubt}`, (s) => (s.doubt === doubt ? side(s.slot.hand) : 0));
  }
  for (const place of places) add(placeColumn(place), (s) => (s.place === place ? 1 : 0));
  const known = strokes.filter((s) => s.handChange !== null);
  const share = known.filter((s) => s.handChange).length / Math.max(1, known.length);
  add(changeColumn, (s) => (s.handChange === null ? share : s.handChange ? 1 : 0));
  return columns;
}

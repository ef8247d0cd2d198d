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

/**
 * Columns of the additive model, the most telling first: where terms can't be told apart, the earlier one speaks for
 * both. Left is +½ and right −½, so that the hand's coefficient is left minus right. A stroke whose hand is open
 * counts as neither, and as the average of changes.
 */
export function designColumns(strokes: readonly PlayedStroke[], withHands: boolean): DesignColumn[] {
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
  if (withHands) add(handColumn, (s) => (s.hand === null ? 0 : s.hand === 'L' ? 0.5 : -0.5));
  for (const place of places) add(placeColumn(place), (s) => (s.place === place ? 1 : 0));
  if (withHands) {
    const known = strokes.filter((s) => s.handChange !== null);
    const share = known.filter((s) => s.handChange).length / Math.max(1, known.length);
    add(changeColumn, (s) => (s.handChange === null ? share : s.handChange ? 1 : 0));
  }
  return columns;
}

import type { Slot } from './slot.ts';

const written = [
  'line',
  'repeat',
  'bar',
  'beat',
  'partial',
  'divisions',
  'hand',
  'accent',
  'grace',
  'buzz',
  'position',
] as const satisfies readonly (keyof Slot)[];

/** What is written at each expected stroke, a column a property, in the order of the slots. */
type WrittenColumns = { readonly [Name in (typeof written)[number]]: Slot[Name][] };

/**
 * Slots as columns of equal length.
 *
 * @example writtenColumns(layOut(sheet)).hand // ['R', 'L', 'R', …]
 */
export function writtenColumns(slots: readonly Slot[]): WrittenColumns {
  return Object.fromEntries(written.map((name) => [name, slots.map((slot) => slot[name])])) as WrittenColumns;
}

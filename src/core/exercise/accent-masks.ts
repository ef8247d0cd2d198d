/** Which partials of every beat carry an accent, in rising order; none for a line of taps alone. */
export type AccentMask = readonly number[];

/** Every set of accented partials of a beat: those with one accent first, then two, …, all, and none last. */
export function everyMask(parts: number): readonly AccentMask[] {
  const masks = Array.from({ length: 2 ** parts }, (_, bits) =>
    Array.from({ length: parts }, (_, index) => index + 1).filter((partial) => bits & (1 << (partial - 1))),
  );
  const order = (mask: AccentMask) => mask.length || parts + 1;
  return masks.sort((a, b) => order(a) - order(b) || (a.join() < b.join() ? -1 : 1));
}

/** The masks with a single accent, then all, then none. */
export function singleMasks(parts: number): readonly AccentMask[] {
  return everyMask(parts).filter((mask) => mask.length < 2 || mask.length === parts);
}

/**
 * A mask's word in an exercise's id.
 *
 * @example maskId([1, 2], 3) // '1+2'; every partial is 'all', no partial 'none'
 */
export function maskId(mask: AccentMask, parts: number): string {
  if (mask.length === 0) return 'none';
  return mask.length === parts ? 'all' : mask.join('+');
}

/**
 * Reads what a person calls a mask: partials in any order joined by `+`, `,` or spaces, `all` or `none`; null
 * for anything else.
 *
 * @example readMask('2+1', 3) // [1, 2]
 */
export function readMask(text: string, parts: number): AccentMask | null {
  const word = text.trim().toLowerCase();
  if (word === 'none') return [];
  if (word === 'all') return Array.from({ length: parts }, (_, index) => index + 1);
  if (!/^\d{1,2}(?:[+,\s]+\d{1,2}){0,20}$/.test(word)) return null;
  const partials = [...new Set(word.split(/[+,\s]+/).map(Number))].sort((a, b) => a - b);
  return partials.every((partial) => partial >= 1 && partial <= parts) ? partials : null;
}

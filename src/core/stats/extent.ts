/**
 * Least and most of some numbers, however many: as arguments of Math.min and Math.max some 65,000 overflow the stack of
 * one engine, 120,000 that of another. Infinity and −Infinity where there are none.
 *
 * @example extent([3, -1, 2]) // { least: -1, most: 3 }
 */
export function extent(values: Iterable<number>): { readonly least: number; readonly most: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return { least, most };
}

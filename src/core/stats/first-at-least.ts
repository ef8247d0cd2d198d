/**
 * Index of the first of ascending values that isn't below `least`, so that as many lie below it; their number where all
 * do. `placeOf` tells a value's place in the order where it is no number itself. Costs the logarithm of their number.
 *
 * @example firstAtLeast([1, 2, 2, 3], 2) // 1
 */
export function firstAtLeast<T>(
  ascending: ArrayLike<T>,
  least: number,
  placeOf: (value: T) => number = Number,
): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (placeOf(ascending[middle]!) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Whether any of the ascending times lies between two times, the two left out. Costs the logarithm of their number.
 *
 * @example anyBetween([1, 2, 3], 1.5, 2.5) // true
 */
export function anyBetween(times: readonly number[], from: number, to: number): boolean {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= from) low = middle + 1;
    else high = middle;
  }
  return low < times.length && times[low]! < to;
}

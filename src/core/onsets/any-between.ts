/** Whether any of the ascending times lies between two times. */
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

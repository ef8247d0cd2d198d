/**
 * Probability that a random value of `upper` exceeds a random one of `lower`, ties counting a half: U/(mn) of Mann &
 * Whitney 1947. O((m + n) log(m + n)). Throws RangeError when a side is empty.
 *
 * @example separationProbability([3, 4], [1, 3]) // 0.875
 */
export function separationProbability(upper: ArrayLike<number>, lower: ArrayLike<number>): number {
  const m = upper.length;
  const n = lower.length;
  if (m === 0 || n === 0) throw new RangeError('one side is empty');
  const low = Float64Array.from(lower).sort();
  const high = Float64Array.from(upper).sort();
  let below = 0;
  let atMost = 0;
  let wins = 0;
  for (const value of high) {
    while (below < n && low[below]! < value) below++;
    while (atMost < n && low[atMost]! <= value) atMost++;
    wins += (below + atMost) / 2;
  }
  return wins / (m * n);
}

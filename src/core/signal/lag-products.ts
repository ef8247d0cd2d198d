/**
 * Writes Σ x[n]·x[n−lag] over n in [from, to) to `sums[at + lag]` for the lags 0 … count − 1. `samples` must reach back to
 * `from − count + 1`. Costs count·(to − from).
 *
 * @example lagProducts([1, 2, 3, 4], 2, 4, 3, sums) // sums: 25, 18, 11
 */
export function lagProducts(
  samples: Float32Array | Float64Array,
  from: number,
  to: number,
  count: number,
  sums: Float64Array,
  at = 0,
): void {
  let lag = 0;
  // Four sums grow side by side: they share each sample read, and none waits for itself.
  for (; lag + 4 <= count; lag += 4) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let older = samples[from - lag - 1]!;
    let third = samples[from - lag - 2]!;
    let oldest = samples[from - lag - 3]!;
    for (let n = from; n < to; n++) {
      const x = samples[n]!;
      const newest = samples[n - lag]!;
      a += x * newest;
      b += x * older;
      c += x * third;
      d += x * oldest;
      oldest = third;
      third = older;
      older = newest;
    }
    sums[at + lag] = a;
    sums[at + lag + 1] = b;
    sums[at + lag + 2] = c;
    sums[at + lag + 3] = d;
  }
  for (; lag < count; lag++) {
    let sum = 0;
    for (let n = from; n < to; n++) sum += samples[n]! * samples[n - lag]!;
    sums[at + lag] = sum;
  }
}

/**
 * Sum of the squares of samples[from … to).
 *
 * @example energyOf([1, 2, 3], 1, 3) // 13
 */
export function energyOf(samples: Float32Array | Float64Array, from = 0, to = samples.length): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += samples[i]! * samples[i]!;
  return sum;
}

/**
 * Largest magnitude of samples[from … to).
 *
 * @example peakOf(Float32Array.of(0.1, -0.4, 0.2), 0, 3) // 0.4
 */
export function peakOf(samples: Float32Array, from: number, to: number): number {
  let peak = 0;
  for (let i = from; i < to; i++) {
    const x = Math.abs(samples[i]!);
    if (x > peak) peak = x;
  }
  return peak;
}

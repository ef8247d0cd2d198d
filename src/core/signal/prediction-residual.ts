/**
 * What a prediction x̂[n] = Σ a[k] · x[n−1−k] leaves of `samples[from … to)`; samples before the array count as silence.
 *
 * @example predictionResidual(Float64Array.of(1), Float32Array.of(1, 1, 3), 0, 3) // 1, 0, 2
 */
export function predictionResidual(
  coefficients: Float64Array,
  samples: Float32Array,
  from: number,
  to: number,
): Float32Array {
  const order = coefficients.length;
  const residual = new Float32Array(to - from);
  for (let n = from; n < to; n++) {
    let x = samples[n]!;
    const reach = Math.min(order, n);
    for (let k = 0; k < reach; k++) x -= coefficients[k]! * samples[n - 1 - k]!;
    residual[n - from] = x;
  }
  return residual;
}

/**
 * What a prediction x̂[n] = Σ a[k] · x[n−1−k] leaves of `samples[from … to)`; samples before the array count as silence.
 * Written to the start of `residual`, which is handed back.
 *
 * @example predictionResidual(Float64Array.of(1), Float32Array.of(1, 1, 3), 0, 3) // 1, 0, 2
 */
export function predictionResidual<Residual extends Float32Array | Float64Array = Float32Array>(
  coefficients: Float64Array,
  samples: Float32Array,
  from: number,
  to: number,
  residual: Residual = new Float32Array(to - from) as Residual,
): Residual {
  const order = coefficients.length;
  let n = from;
  // Four neighbours side by side: they share each sample read, and none waits for itself.
  for (; n + 4 <= to && n >= order; n += 4) {
    let newest = samples[n]!;
    let second = samples[n + 1]!;
    let third = samples[n + 2]!;
    let a = newest;
    let b = second;
    let c = third;
    let d = samples[n + 3]!;
    for (let k = 0; k < order; k++) {
      const weight = coefficients[k]!;
      const oldest = samples[n - 1 - k]!;
      a -= weight * oldest;
      b -= weight * newest;
      c -= weight * second;
      d -= weight * third;
      third = second;
      second = newest;
      newest = oldest;
    }
    const at = n - from;
    residual[at] = a;
    residual[at + 1] = b;
    residual[at + 2] = c;
    residual[at + 3] = d;
  }
  for (; n < to; n++) {
    let x = samples[n]!;
    const reach = Math.min(order, n);
    for (let k = 0; k < reach; k++) x -= coefficients[k]! * samples[n - 1 - k]!;
    residual[n - from] = x;
  }
  return residual;
}

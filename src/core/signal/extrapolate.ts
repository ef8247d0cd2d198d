/**
 * The `count` samples that a prediction x̂[n] = Σ a[k] · x[n−1−k] expects after `past[… end)`.
 *
 * @example extrapolate(Float64Array.of(0, 1), Float32Array.of(1, 2), 2, 4) // 1, 2, 1, 2
 */
export function extrapolate(
  coefficients: Float64Array,
  past: Float32Array,
  end: number,
  count: number,
): Float32Array {
  const order = coefficients.length;
  const out = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    let x = 0;
    for (let k = 0; k < order; k++) {
      const at = n - 1 - k;
      x += coefficients[k]! * (at >= 0 ? out[at]! : (past[end + at] ?? 0));
    }
    out[n] = x;
  }
  return out;
}

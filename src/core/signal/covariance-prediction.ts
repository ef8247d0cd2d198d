/** Share of the power added as white noise: keeps the equations solvable for a sound of few vibrations. */
const ridge = 1e-5;

/**
 * Coefficients that predict x[n] from x[n−1 … n−order] best over n in [from, to): x̂[n] = Σ a[k] · x[n−1−k]. Exact for
 * a sum of up to order/2 damped vibrations, since no window bends them; not stable by itself, so only for a few
 * milliseconds ahead. `samples` must reach back to `from − order`. Costs order³/6 + order·(to − from).
 *
 * Covariance method (Makhoul, Linear prediction: a tutorial review, Proc. IEEE 63, 1975, quoted from memory).
 *
 * @example covariancePrediction(cosine, 10, 200, 2) // about [2·cos ω, −1]
 */
export function covariancePrediction(
  samples: Float32Array | Float64Array,
  from: number,
  to: number,
  order: number,
): Float64Array {
  const x = samples;
  const size = order + 1;
  const c = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    let sum = 0;
    for (let n = from; n < to; n++) sum += x[n]! * x[n - j]!;
    c[j] = sum;
  }
  // Each further row follows from the one above by dropping the newest product and adding an older one.
  for (let i = 1; i < size; i++) {
    for (let j = i; j < size; j++) {
      c[i * size + j] = c[(i - 1) * size + j - 1]! + x[from - i]! * x[from - j]! - x[to - i]! * x[to - j]!;
    }
  }
  const bound = ridge * c[0]! + 1e-14;
  // Cholesky of the lower-right block, then the two triangular solves.
  const l = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[(j + 1) * size + i + 1]! + (i === j ? bound : 0);
      for (let k = 0; k < j; k++) sum -= l[i * order + k]! * l[j * order + k]!;
      l[i * order + j] = i === j ? Math.sqrt(Math.max(sum, 1e-18)) : sum / l[j * order + j]!;
    }
  }
  const a = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    let sum = c[i + 1]!;
    for (let k = 0; k < i; k++) sum -= l[i * order + k]! * a[k]!;
    a[i] = sum / l[i * order + i]!;
  }
  for (let i = order - 1; i >= 0; i--) {
    let sum = a[i]!;
    for (let k = i + 1; k < order; k++) sum -= l[k * order + i]! * a[k]!;
    a[i] = sum / l[i * order + i]!;
  }
  return a;
}

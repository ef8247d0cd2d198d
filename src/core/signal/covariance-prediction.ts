import { lagProducts } from './lag-products.ts';

/** Share of the power added as white noise: keeps the equations solvable for a sound of few vibrations. */
const ridge = 1e-5;

/**
 * Coefficients that predict x[n] from x[n−1 … n−order] best over n in [from, to): x̂[n] = Σ a[k] · x[n−1−k]. Exact for
 * a sum of up to order/2 damped vibrations, since no window bends them; not stable by itself, so only for a few
 * milliseconds ahead. `samples` must reach back to `from − order`. Costs order³/6 + order·(to − from), or order³/6 alone
 * where the `lagProducts` of the stretch, lags 0 … order, are known.
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
  known?: Float64Array,
): Float64Array {
  const x = samples;
  const size = order + 1;
  const c = new Float64Array(size * size);
  const lags = known ?? new Float64Array(size);
  if (known === undefined) lagProducts(x, from, to, size, lags);
  // Below the diagonal, where column 0 is the right-hand side. Each further column follows from the one before by
  // dropping the newest product and adding an older one.
  for (let i = 0; i < size; i++) {
    c[i * size] = lags[i]!;
    for (let j = 1; j <= i; j++) {
      c[i * size + j] = c[(i - 1) * size + j - 1]! + x[from - i]! * x[from - j]! - x[to - i]! * x[to - j]!;
    }
  }
  factorise(c, size, ridge * lags[0]! + 1e-20);
  return solved(c, size);
}

/**
 * Cholesky's factor of the rows and columns from 1 on, `bound` added to the diagonal, in place; the diagonal then
 * holds the factor's inverse.
 */
function factorise(c: Float64Array, size: number, bound: number): void {
  for (let i = 1; i < size; i++) {
    const row = i * size;
    for (let j = 1; j < i; j++) {
      const other = j * size;
      let sum = c[row + j]!;
      for (let k = 1; k < j; k++) sum -= c[row + k]! * c[other + k]!;
      c[row + j] = sum * c[other + j]!;
    }
    let left = c[row + i]! + bound;
    for (let k = 1; k < i; k++) left -= c[row + k]! * c[row + k]!;
    c[row + i] = 1 / Math.sqrt(Math.max(left, 1e-24));
  }
}

/** The two triangular solves, for the right-hand side in column 0. */
function solved(c: Float64Array, size: number): Float64Array {
  const order = size - 1;
  const a = new Float64Array(order);
  for (let i = 1; i < size; i++) {
    let sum = c[i * size]!;
    for (let k = 1; k < i; k++) sum -= c[i * size + k]! * a[k - 1]!;
    a[i - 1] = sum * c[i * size + i]!;
  }
  for (let i = order; i > 0; i--) {
    let sum = a[i - 1]!;
    for (let k = i + 1; k < size; k++) sum -= c[k * size + i]! * a[k - 1]!;
    a[i - 1] = sum * c[i * size + i]!;
  }
  return a;
}

/** Time constant of the rise, s; the power rises with its square. */
const riseSeconds = 0.00007;
/** Steps a sample in which a rise may be placed. */
export const perSample = 8;
/** A product of variances that leaves room for more. */
const largestProduct = 1e150;
const shapes = new Map<string, Float64Array>();

/**
 * How an attack's power rises, (1 − e^(−t/ρ))², at eighths of a sample over `seconds` at `rate` Hz; worked out once.
 *
 * @example riseShape(48000, 0.001).length // 384
 */
export function riseShape(rate: number, seconds: number): Float64Array {
  const key = `${rate} ${seconds}`;
  const known = shapes.get(key);
  if (known !== undefined) return known;
  const values = Float64Array.from(
    { length: Math.ceil(seconds * rate) * perSample },
    (_, i) => (1 - Math.exp(-i / perSample / rate / riseSeconds)) ** 2,
  );
  shapes.set(key, values);
  return values;
}

/**
 * Log-likelihood, but for a constant, of Gaussian samples `from … to` with these squares (`power`) under the variance
 * floor + g·shape(t), t counted from `at` (samples): −½·Σ (ln v + x²/v). The rise's size g is fitted to the power from
 * `at` on.
 *
 * @example riseLikelihood([1, 1, 90, 110], 1, 2, riseShape(48000, 0.001), 0, 4) // more than with the rise at 1
 */
export function riseLikelihood(
  power: ArrayLike<number>,
  floor: number,
  at: number,
  shape: Float64Array,
  from: number,
  to: number,
): number {
  const first = Math.ceil(at);
  const offset = Math.round((first - at) * perSample);
  let energy = 0;
  let weight = 0;
  for (let i = first, j = offset; i < to; i++, j += perSample) {
    energy += power[i]!;
    weight += shape[j]!;
  }
  const rise = Math.max((energy / floor - (to - first)) / Math.max(weight, 1e-9), 1e-3);
  let squares = 0;
  for (let i = from; i < first; i++) squares += power[i]!;
  // In units of the floor. Two samples share a division, and many a logarithm: that of their product.
  let logs = (to - from) * Math.log(floor);
  let product = 1;
  let i = first;
  let j = offset;
  for (; i + 1 < to; i += 2, j += 2 * perSample) {
    const v = 1 + rise * shape[j]!;
    const w = 1 + rise * shape[j + perSample]!;
    squares += (power[i]! * w + power[i + 1]! * v) / (v * w);
    product *= v * w;
    if (product > largestProduct) {
      logs += Math.log(product);
      product = 1;
    }
  }
  if (i < to) {
    const v = 1 + rise * shape[j]!;
    squares += power[i]! / v;
    product *= v;
  }
  return -0.5 * (squares / floor + logs + Math.log(product));
}

/**
 * Prediction coefficients of `order` for `samples[from … to)` by Burg's method, which keeps damped sinusoids that the
 * autocorrelation method smears (Burg 1975; Kay, Modern Spectral Estimation, 1988, ch. 7; quoted from memory):
 * x̂[n] = Σ a[k] · x[n−1−k]. Always stable, so that an extrapolated tail dies away.
 */
export function burg(samples: Float32Array, from: number, to: number, order: number): Float64Array {
  const n = to - from;
  const forward = new Float64Array(n);
  const backward = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    forward[i] = samples[from + i]!;
    backward[i] = forward[i]!;
  }
  const a = new Float64Array(order);
  const previous = new Float64Array(order);
  for (let m = 0; m < order && m < n - 1; m++) {
    let product = 0;
    let power = 1e-30;
    for (let i = m + 1; i < n; i++) {
      const f = forward[i]!;
      const b = backward[i - 1]!;
      product += f * b;
      power += f * f + b * b;
    }
    const k = (2 * product) / power;
    previous.set(a);
    a[m] = k;
    for (let i = 0; i < m; i++) a[i] = previous[i]! - k * previous[m - 1 - i]!;
    for (let i = n - 1; i > m; i--) {
      const f = forward[i]!;
      const b = backward[i - 1]!;
      forward[i] = f - k * b;
      backward[i] = b - k * f;
    }
  }
  return a;
}

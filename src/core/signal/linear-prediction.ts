/** Prediction of a sample from those before it: x̂[n] = Σ coefficients[k] · x[n−1−k]. */
export interface LinearPrediction {
  readonly coefficients: Float64Array;
  /** Mean square of what the prediction leaves over the fitted stretch. */
  readonly residualPower: number;
}

/**
 * Fits a prediction of `order` to `samples[from … to)` by the autocorrelation method (Levinson–Durbin recursion;
 * Makhoul, Linear prediction: a tutorial review, Proc. IEEE 63, 1975, quoted from memory). `ridge` is the share of
 * the power added as white noise, which bounds how much the prediction can promise.
 */
export function linearPrediction(
  samples: Float32Array,
  from: number,
  to: number,
  order: number,
  ridge: number,
): LinearPrediction {
  const r = new Float64Array(order + 1);
  for (let lag = 0; lag <= order; lag++) {
    let sum = 0;
    for (let i = from + lag; i < to; i++) sum += samples[i]! * samples[i - lag]!;
    r[lag] = sum;
  }
  const count = Math.max(1, to - from);
  const a = new Float64Array(order);
  let error = r[0]! * (1 + ridge) + 1e-20;
  const next = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    let k = r[i + 1]!;
    for (let j = 0; j < i; j++) k -= a[j]! * r[i - j]!;
    k /= error;
    next[i] = k;
    for (let j = 0; j < i; j++) next[j] = a[j]! - k * a[i - 1 - j]!;
    a.set(next.subarray(0, i + 1));
    error *= 1 - k * k;
  }
  return { coefficients: a, residualPower: error / count };
}

/** What the prediction leaves of `samples[from … to)`; samples before the array count as silence. */
export function predictionResidual(
  prediction: LinearPrediction,
  samples: Float32Array,
  from: number,
  to: number,
): Float32Array {
  const { coefficients } = prediction;
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

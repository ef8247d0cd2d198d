import { linearPrediction, predictionResidual } from '../signal/linear-prediction.ts';

/** Sub-sample onset with its curvature-based standard error. */
export interface RefinedOnset {
  /** Seconds from the first sample of the window handed in. */
  readonly time: number;
  /** From the curvature of the likelihood alone, s. */
  readonly curvatureSe: number;
  /** Ratio of the attack's power to the floor it was read from, dB. */
  readonly depthDb: number;
}

/** Length of sound before the attack from which it is predicted, s. */
export const pastSeconds = 0.018;
/** How far either side of the coarse time the onset is looked for, s. */
const searchSeconds = 0.0035;
/** How much of the attack the likelihood sees, s. */
const attackSeconds = 0.0012;
/** Stretch before the onset over which the floor must be quiet, s. */
const quietSeconds = 0.0015;
const order = 12;
/** Every stroke is read at the same depth below its own attack, so that loud ones don't read earlier. */
const floorShare = 0.004;
/** Time constant of the rise, s; the power rises with its fourth power. */
const riseSeconds = 0.0002;

/**
 * Refines an onset near `coarse` (samples from the window's start) by maximum likelihood of a variance that rises as
 * s² + g·(1 − e^(−t/ρ))⁴ over the whitened sound. `samples` is at `rate` Hz and must begin at least
 * `pastSeconds + searchSeconds` before and end `searchSeconds + attackSeconds` after it.
 */
export function refineOnset(samples: Float32Array, rate: number, coarse: number): RefinedOnset {
  const reach = Math.ceil(searchSeconds * rate);
  const attack = Math.ceil(attackSeconds * rate);
  const quiet = Math.ceil(quietSeconds * rate);
  const start = Math.max(0, Math.round(coarse) - reach - quiet);
  const end = Math.min(samples.length, Math.round(coarse) + reach + attack);
  const past = Math.max(order * 4, start);
  const prediction = linearPrediction(
    samples,
    Math.max(0, past - Math.round(pastSeconds * rate)),
    past,
    order,
    1e-4,
  );
  const residual = predictionResidual(prediction, samples, start, end);
  const power = new Float64Array(residual.length);
  let peak = 0;
  for (let i = 0; i < residual.length; i++) {
    power[i] = residual[i]! * residual[i]!;
    if (power[i]! > peak) peak = power[i]!;
  }
  const floor = Math.max(prediction.residualPower, floorShare * floorShare * peak, 1e-14);
  const first = changePoint(power, floor, attack >> 1);
  const span = Math.ceil(0.0008 * rate);
  const from = Math.max(0, first - span - quiet);
  const to = Math.min(power.length, first + attack);
  const shape = riseShape(rate, to - from);
  // One-sample steps first, then an eighth of a sample round the best.
  let best = first;
  let bestValue = Number.NEGATIVE_INFINITY;
  for (let t = Math.max(1, first - span); t <= first + Math.ceil(span / 3); t++) {
    const value = logLikelihood(power, floor, t, shape, from, to);
    if (value > bestValue) {
      bestValue = value;
      best = t;
    }
  }
  const step = 1 / shape.perSample;
  const fine = new Float64Array(2 * shape.perSample + 1);
  let fineBest = 0;
  let sum = 0;
  let weighted = 0;
  let spread = 0;
  for (let i = 0; i < fine.length; i++) {
    fine[i] = logLikelihood(power, floor, best - 1 + i * step, shape, from, to);
    if (fine[i]! > fine[fineBest]!) fineBest = i;
  }
  for (let i = 0; i < fine.length; i++) {
    const w = Math.exp(fine[i]! - fine[fineBest]!);
    sum += w;
    weighted += w * i;
    spread += w * i * i;
  }
  const mean = weighted / sum;
  if (!Number.isFinite(mean)) return { time: coarse / rate, curvatureSe: searchSeconds / 4, depthDb: 0 };
  return {
    time: (start + best - 1 + mean * step) / rate,
    curvatureSe: (Math.sqrt(Math.max(spread / sum - mean * mean, 0.25)) * step) / rate,
    depthDb: 10 * Math.log10(peak / floor),
  };
}

/**
 * Coarse place for the fine likelihood: the change from the known floor to one higher variance that explains the
 * power up to just behind its peak best.
 */
function changePoint(power: Float64Array, floor: number, margin: number): number {
  let peakAt = 0;
  for (let i = 0; i < power.length; i++) if (power[i]! > power[peakAt]!) peakAt = i;
  const end = Math.min(power.length, peakAt + margin);
  const logFloor = Math.log(floor);
  let best = peakAt;
  let bestValue = Number.NEGATIVE_INFINITY;
  let after = 0;
  let before = 0;
  for (let i = 0; i < end; i++) before += power[i]!;
  for (let t = end - 1; t > 0; t--) {
    after += power[t]!;
    before -= power[t]!;
    const n = end - t;
    const value = -(before / floor + t * logFloor + n * (1 + Math.log(Math.max(after / n, floor))));
    if (value > bestValue) {
      bestValue = value;
      best = t;
    }
  }
  return best;
}

interface RiseShape {
  readonly perSample: number;
  readonly values: Float64Array;
}

/** (1 − e^(−t/ρ))⁴ at eighths of a sample. */
function riseShape(rate: number, length: number): RiseShape {
  const perSample = 8;
  const values = new Float64Array((length + 2) * perSample);
  for (let i = 0; i < values.length; i++) {
    values[i] = (1 - Math.exp(-i / perSample / rate / riseSeconds)) ** 4;
  }
  return { perSample, values };
}

/**
 * Log-likelihood over the samples `from … to` of an onset at `at` (samples), the rise's size fitted to the power that
 * follows it.
 */
function logLikelihood(
  power: Float64Array,
  floor: number,
  at: number,
  shape: RiseShape,
  from: number,
  to: number,
): number {
  const { perSample, values } = shape;
  const first = Math.ceil(at);
  const offset = Math.round((first - at) * perSample);
  let energy = 0;
  let weight = 0;
  for (let i = first, j = offset; i < to; i++, j += perSample) {
    energy += power[i]!;
    weight += values[j]!;
  }
  const gain = Math.max((energy - (to - first) * floor) / Math.max(weight, 1e-9), floor * 1e-3);
  let sum = 0;
  for (let i = from; i < first; i++) sum += power[i]!;
  sum = sum / floor + (first - from) * Math.log(floor);
  for (let i = first, j = offset; i < to; i++, j += perSample) {
    const v = floor + gain * values[j]!;
    sum += Math.log(v) + power[i]! / v;
  }
  return -0.5 * sum;
}

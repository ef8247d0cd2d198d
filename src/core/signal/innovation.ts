import { covariancePrediction } from './covariance-prediction.ts';
import { lagProducts } from './lag-products.ts';
import { predictionResidual } from './prediction-residual.ts';

/**
 * Power of what a band's own recent past does not predict. A struck head rings on at fixed frequencies and its band
 * power ripples by beating; prediction takes the ringing away and leaves what is new: the next stroke.
 *
 * Predicted by the covariance method, fitted to the last `past` samples before each block, never to the block itself.
 */
interface InnovationState {
  readonly order: number;
  /** Samples fitted. */
  readonly past: number;
  /** Samples predicted at a time. */
  readonly step: number;
  /** The last `past + order` samples seen. */
  readonly history: Float32Array;
  /** Lag products of the last whole steps that lie within the past, the newest last. */
  readonly products: Float64Array;
}

export function innovationState(order: number, past: number, step: number): InnovationState {
  const products = new Float64Array(Math.floor(past / step) * (order + 1));
  return { order, past, step, history: new Float32Array(past + order), products };
}

/** Share of the band's own power that prediction may never remove: real ringing is never quite that regular. */
const rawShare = 0.002;

/**
 * `power` (mean power a frame of `samples`, `perFrame` samples each) with the innovation's power in its place, step
 * after step, wherever the power of the step before is above `quiet`; elsewhere there is nothing to remove. Samples may
 * come in any number of whole steps at a time; only the last may be cut short. Costs order³/6 + order·(a step's samples) for
 * a step worked on.
 */
export function innovationPower(
  state: InnovationState,
  samples: Float32Array,
  count: number,
  power: Float32Array,
  perFrame: number,
  quiet: number,
): Float32Array {
  const { order, past, step, history, products: kept } = state;
  const lead = history.length;
  const x = new Float32Array(lead + count);
  x.set(history);
  x.set(samples.subarray(0, count), lead);
  const size = order + 1;
  const framesInStep = step / perFrame;
  // The past is fitted a step at a time: a step's products serve all fits whose past it lies in.
  const whole = kept.length / size;
  const steps = Math.ceil(power.length / framesInStep);
  const products = new Float64Array((whole + steps) * size);
  products.set(kept);
  const lags = new Float64Array(size);
  const residual = new Float64Array(step);
  const out = power.slice();
  for (let block = 0; block < steps; block++) {
    const frame = block * framesInStep;
    const end = lead + block * step;
    const frames = Math.min(framesInStep, power.length - frame);
    if (frames === framesInStep) lagProducts(x, end, end + step, size, products, (whole + block) * size);
    const recent = products[(block + whole - 1) * size]!;
    if (recent < quiet * step) continue;
    lagProducts(x, end - past, end - whole * step, size, lags);
    for (let part = 0; part < whole; part++) {
      const at = (block + part) * size;
      for (let lag = 0; lag < size; lag++) lags[lag]! += products[at + lag]!;
    }
    const a = covariancePrediction(x, end - past, end, order, lags);
    predictionResidual(a, x, end, end + frames * perFrame, residual);
    for (let f = 0; f < frames; f++) {
      let sum = 0;
      for (let n = f * perFrame; n < (f + 1) * perFrame; n++) sum += residual[n]! * residual[n]!;
      const raw = power[frame + f]!;
      out[frame + f] = Math.min(raw, sum / perFrame + rawShare * raw);
    }
  }
  history.set(x.subarray(x.length - lead));
  kept.set(products.subarray(steps * size));
  return out;
}

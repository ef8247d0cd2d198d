import { covariancePrediction } from './covariance-prediction.ts';
import { lagProducts } from './lag-products.ts';
import { predictionResidual } from './prediction-residual.ts';

/**
 * Power of what a band's own recent past does not predict. A struck head rings on at fixed frequencies and its band
 * power ripples by beating; prediction takes the ringing away and leaves what is new: the next stroke.
 *
 * Predicted by the covariance method, fitted to the last `past` samples before each block, never to the block itself.
 */
export interface InnovationState {
  readonly order: number;
  /** Samples fitted. */
  readonly past: number;
  /** The last `past + order` samples seen. */
  readonly history: Float32Array;
}

export function innovationState(order: number, past: number): InnovationState {
  return { order, past, history: new Float32Array(past + order) };
}

/** Share of the band's own power that prediction may never remove: real ringing is never quite that regular. */
const rawShare = 0.002;

/**
 * Replaces `power` (mean power a frame of `samples`, `perFrame` samples each) by the innovation's power, block after
 * block of `blockFrames`, wherever the power just before the block is above `quiet`; elsewhere there is nothing to
 * remove. Costs order³/6 + order·(a block's samples) for a block worked on.
 */
export function innovationPower(
  state: InnovationState,
  samples: Float32Array,
  count: number,
  power: Float32Array,
  perFrame: number,
  blockFrames: number,
  quiet: number,
): Float32Array {
  const { order, past, history } = state;
  const lead = history.length;
  const x = new Float32Array(lead + count);
  x.set(history);
  x.set(samples.subarray(0, count), lead);
  const size = order + 1;
  const step = perFrame * blockFrames;
  // The past is fitted a block at a time: a block's products serve all fits whose past it lies in.
  const whole = Math.floor(past / step);
  const blocks = Math.ceil(power.length / blockFrames);
  const products = new Float64Array((whole + blocks) * size);
  for (let block = 0; block < whole + blocks - 1; block++) {
    const from = lead + (block - whole) * step;
    lagProducts(x, from, from + step, size, products, block * size);
  }
  const lags = new Float64Array(size);
  const residual = new Float64Array(step);
  const out = power.slice();
  for (let block = 0; block < blocks; block++) {
    const frame = block * blockFrames;
    const end = lead + block * step;
    const recent = products[(block + whole - 1) * size]!;
    if (recent < quiet * step) continue;
    lagProducts(x, end - past, end - whole * step, size, lags);
    for (let part = 0; part < whole; part++) {
      const at = (block + part) * size;
      for (let lag = 0; lag < size; lag++) lags[lag]! += products[at + lag]!;
    }
    const a = covariancePrediction(x, end - past, end, order, lags);
    const frames = Math.min(blockFrames, power.length - frame);
    predictionResidual(a, x, end, end + frames * perFrame, residual);
    for (let f = 0; f < frames; f++) {
      let sum = 0;
      for (let n = f * perFrame; n < (f + 1) * perFrame; n++) sum += residual[n]! * residual[n]!;
      const raw = power[frame + f]!;
      out[frame + f] = Math.min(raw, sum / perFrame + rawShare * raw);
    }
  }
  history.set(x.subarray(x.length - lead));
  return out;
}

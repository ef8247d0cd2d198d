import { covariancePrediction } from './covariance-prediction.ts';

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
 * remove. Costs order² + order·past for a block worked on.
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
  const x = new Float64Array(lead + count);
  x.set(history);
  for (let i = 0; i < count; i++) x[lead + i] = samples[i]!;
  const out = power.slice();
  for (let frame = 0; frame < power.length; frame += blockFrames) {
    const end = lead + frame * perFrame;
    let recent = 0;
    for (let i = end - perFrame * blockFrames; i < end; i++) recent += x[i]! * x[i]!;
    if (recent < quiet * perFrame * blockFrames) continue;
    const a = covariancePrediction(x, end - past, end, order);
    const frames = Math.min(blockFrames, power.length - frame);
    for (let f = 0; f < frames; f++) {
      let sum = 0;
      for (let n = end + f * perFrame; n < end + (f + 1) * perFrame; n++) {
        let e = x[n]!;
        for (let k = 0; k < order; k++) e -= a[k]! * x[n - 1 - k]!;
        sum += e * e;
      }
      const raw = power[frame + f]!;
      out[frame + f] = Math.min(raw, sum / perFrame + rawShare * raw);
    }
  }
  history.set(x.subarray(x.length - lead));
  return out;
}

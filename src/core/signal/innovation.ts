/**
 * Power of what a band's own recent past does not predict. A struck head rings on at fixed frequencies and its band
 * power ripples by beating; prediction takes the ringing away and leaves what is new: the next stroke.
 *
 * Covariance method (Makhoul, Linear prediction: a tutorial review, Proc. IEEE 63, 1975, quoted from memory), fitted
 * to the last `past` samples before each block, never to the block itself.
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

/** Coefficients that predict x[n] from x[n−1 … n−order] best over n in [from, to). */
function covariancePrediction(x: Float64Array, from: number, to: number, order: number): Float64Array {
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
  const ridge = 1e-5 * c[0]! + 1e-14;
  // Cholesky of the lower-right block, then the two triangular solves.
  const l = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[(j + 1) * size + i + 1]! + (i === j ? ridge : 0);
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

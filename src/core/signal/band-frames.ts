import { bandLayout } from './band-layout.ts';
import { halfBandState, splitHalfBand } from './half-band.ts';
import { applyHighPass, highPass } from './high-pass.ts';
import { innovationPower, innovationState } from './innovation.ts';
import type { Source } from './source.ts';

/** Mean power of each band in each frame, raw and with its ringing predicted away. */
export interface BandBlock {
  /** Number of the first frame; frame f covers work-rate samples f·hop … (f+1)·hop. */
  readonly firstFrame: number;
  readonly frames: number;
  /** One array a band, the highest first, `frames` long; linear power, full-scale sine = ½. */
  readonly power: readonly Float32Array[];
  /**
   * The same with the ringing of the two lowest bands predicted away (see `innovation.ts`); equal to `power` in the
   * others.
   */
  readonly fresh: readonly Float32Array[];
}

/** Below this the lowest band is rumble, handling noise and mains hum, not stroke; common practice. */
const rumbleHz = 70;

/** Frames handed over at a time: long enough to be cheap, short enough that memory stays bounded. */
const framesPerBlock = 4096;
/** Frames split into bands at a time: few enough that their samples stay in the processor's cache. */
const framesPerPart = 512;

/** Order, fitted past (s) and block (frames) of the prediction; chosen by measuring soft taps in drum tails. */
const ringing = { order: 20, upperOrder: 8, pastSeconds: 0.06, blockFrames: 10 };
/**
 * A band holds ringing worth predicting where it is this many times louder than the quietest it has been, and never
 * below the absolute bound (-80 dB).
 */
const ringingRatio = 8;
const quietPower = 1e-8;

/**
 * Walks channel `channel` of a recording once, in order, and hands over band powers block by block.
 * The last block is filled up with silence. Linear in length; memory doesn't grow with it.
 */
export function* bandFrames(source: Source, channel: number): Generator<BandBlock> {
  const layout = bandLayout(source.sampleRate);
  const pre = Array.from({ length: layout.preHalvings }, halfBandState);
  const splits = Array.from({ length: layout.stages }, halfBandState);
  const lowRate = layout.workRate / 2 ** layout.stages;
  const rumble = highPass(rumbleHz, lowRate);
  const past = Math.round(ringing.pastSeconds * lowRate);
  const lowState = innovationState(ringing.order, past);
  const upperState = innovationState(ringing.upperOrder, past);
  const quietest = layout.bands.map(() => Number.POSITIVE_INFINITY);
  const inputHop = layout.hop * 2 ** layout.preHalvings;
  const perFrame = layout.hop / 2 ** layout.stages;
  const total = Math.ceil(source.length / inputHop);
  const half = new Float32Array((framesPerPart * layout.hop) >> 1);
  const upper = new Float32Array(framesPerBlock * perFrame);
  const lowest = new Float32Array(framesPerBlock * perFrame);
  for (let firstFrame = 0; firstFrame < total; firstFrame += framesPerBlock) {
    const frames = Math.min(framesPerBlock, total - firstFrame);
    const count = frames * perFrame;
    const power: Float32Array[] = layout.bands.map(() => new Float32Array(frames));
    for (let from = 0; from < frames; from += framesPerPart) {
      const to = Math.min(from + framesPerPart, frames);
      const samples = source.read(channel, (firstFrame + from) * inputHop, (firstFrame + to) * inputHop);
      let left = samples.length;
      for (const state of pre) {
        splitHalfBand(state, samples, left, samples, null);
        left >>= 1;
      }
      for (const [band, state] of splits.entries()) {
        splitHalfBand(state, samples, left, samples, half);
        left >>= 1;
        framePower(half, left, power[band]!, from, to);
      }
      applyHighPass(rumble, samples, left);
      framePower(samples, left, power[layout.stages]!, from, to);
      upper.set(half.subarray(0, left), from * perFrame);
      lowest.set(samples.subarray(0, left), from * perFrame);
    }
    const fresh = power.slice();
    const predict = (state: typeof lowState, band: number, values: Float32Array) => {
      const sorted = everyFourth(power[band]!).sort();
      quietest[band] = Math.min(quietest[band]!, sorted[Math.floor(sorted.length * 0.02)] ?? 0);
      const quiet = Math.max(quietPower, ringingRatio * quietest[band]!);
      fresh[band] = innovationPower(state, values, count, power[band]!, perFrame, ringing.blockFrames, quiet);
    };
    predict(upperState, layout.stages - 1, upper);
    predict(lowState, layout.stages, lowest);
    yield { firstFrame, frames, power, fresh };
  }
}

function everyFourth(values: Float32Array): Float32Array {
  const some = new Float32Array(Math.ceil(values.length / 4));
  for (let i = 0; i < some.length; i++) some[i] = values[4 * i]!;
  return some;
}

/** Mean power of each of the frames [from, to), which `count` samples make up. */
function framePower(
  samples: Float32Array,
  count: number,
  power: Float32Array,
  from: number,
  to: number,
): void {
  const hop = count / (to - from);
  let at = 0;
  for (let frame = from; frame < to; frame++) {
    let sum = 0;
    for (let i = 0; i < hop; i++) {
      const x = samples[at++]!;
      sum += x * x;
    }
    power[frame] = sum / hop;
  }
}

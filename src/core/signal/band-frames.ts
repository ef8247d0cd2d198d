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
  const total = Math.ceil(source.length / inputHop);
  for (let firstFrame = 0; firstFrame < total; firstFrame += framesPerBlock) {
    const frames = Math.min(framesPerBlock, total - firstFrame);
    const samples = source.read(channel, firstFrame * inputHop, (firstFrame + frames) * inputHop);
    let count = samples.length;
    for (const state of pre) {
      splitHalfBand(state, samples, count, samples, null);
      count >>= 1;
    }
    const power: Float32Array[] = [];
    const upper = new Float32Array(count >> 1);
    for (const state of splits) {
      splitHalfBand(state, samples, count, samples, upper);
      count >>= 1;
      power.push(framePower(upper, count, frames));
    }
    applyHighPass(rumble, samples, count);
    power.push(framePower(samples, count, frames));
    const fresh = power.slice();
    const perFrame = count / frames;
    const predict = (state: typeof lowState, band: number, values: Float32Array) => {
      const sorted = power[band]!.filter((_, frame) => frame % 4 === 0).sort();
      quietest[band] = Math.min(quietest[band]!, sorted[Math.floor(sorted.length * 0.02)] ?? 0);
      const quiet = Math.max(quietPower, ringingRatio * quietest[band]!);
      fresh[band] = innovationPower(state, values, count, power[band]!, perFrame, ringing.blockFrames, quiet);
    };
    predict(upperState, layout.stages - 1, upper);
    predict(lowState, layout.stages, samples);
    yield { firstFrame, frames, power, fresh };
  }
}

function framePower(samples: Float32Array, count: number, frames: number): Float32Array {
  const power = new Float32Array(frames);
  const hop = count / frames;
  let at = 0;
  for (let frame = 0; frame < frames; frame++) {
    let sum = 0;
    for (let i = 0; i < hop; i++) {
      const x = samples[at++]!;
      sum += x * x;
    }
    power[frame] = sum / hop;
  }
  return power;
}

import { type BandLayout, bandLayout } from './band-layout.ts';
import { halfBandState, splitHalfBand } from './half-band.ts';
import { applyHighPass, highPass } from './high-pass.ts';
import { innovationPower, innovationState } from './innovation.ts';

/** Mean power of each band in each frame, raw and with its ringing predicted away. */
export interface BandBlock {
  /** One array a band, the highest first, a number a frame of `hop` work-rate samples; linear power, full-scale sine = ½. */
  readonly power: readonly Float32Array[];
  /**
   * The same with the ringing of the two lowest bands predicted away (see `innovation.ts`); equal to `power` in the
   * others.
   */
  readonly fresh: readonly Float32Array[];
}

/** Below this the lowest band is rumble, handling noise and mains hum, not stroke; common practice. */
const rumbleHz = 70;

/** Order, fitted past (s) and step (frames) of the prediction; chosen by measuring soft taps in drum tails. */
const ringing = { order: 20, upperOrder: 8, pastSeconds: 0.06, stepFrames: 10 };
/** Below this a band has no ringing worth predicting (-80 dB). */
const quietPower = 1e-8;

/** Frames may come in any number of whole steps of so many; only the last step may be cut short. */
export const bandStepFrames = ringing.stepFrames;
/** Frames split at a time: few enough that their samples stay in the processor's cache. */
export const framesAtATime = 51 * bandStepFrames;

/** A recording being split into bands, piece by piece. */
interface BandSplit {
  readonly layout: BandLayout;
  /** Samples of the recording in a frame. */
  readonly inputHop: number;
  /** Splits the next whole frames; `samples` are overwritten. How they are cut into pieces changes nothing. */
  next(samples: Float32Array): BandBlock;
}

/**
 * Begins to split a recording of one channel into the power of its bands. Causal: a frame's power depends on nothing
 * after it. Linear; memory doesn't grow.
 *
 * @example bandSplit(48000).next(new Float32Array(480)).power[0].length // 10
 */
export function bandSplit(sampleRate: number): BandSplit {
  const layout = bandLayout(sampleRate);
  const { stages, hop } = layout;
  const pre = Array.from({ length: layout.preHalvings }, halfBandState);
  const splits = Array.from({ length: stages }, halfBandState);
  const lowRate = layout.workRate / 2 ** stages;
  const rumble = highPass(rumbleHz, lowRate);
  const perFrame = hop / 2 ** stages;
  const past = Math.round(ringing.pastSeconds * lowRate);
  const step = perFrame * ringing.stepFrames;
  const lowState = innovationState(ringing.order, past, step);
  const upperState = innovationState(ringing.upperOrder, past, step);
  const inputHop = hop * 2 ** layout.preHalvings;
  let half = new Float32Array(0);

  function next(samples: Float32Array): BandBlock {
    const frames = samples.length / inputHop;
    const power: Float32Array[] = layout.bands.map(() => new Float32Array(frames));
    if (half.length < (frames * hop) >> 1) half = new Float32Array((frames * hop) >> 1);
    let left = samples.length;
    for (const state of pre) {
      splitHalfBand(state, samples, left, samples, null);
      left >>= 1;
    }
    for (const [band, state] of splits.entries()) {
      splitHalfBand(state, samples, left, samples, half);
      left >>= 1;
      framePower(half, left, power[band]!);
    }
    applyHighPass(rumble, samples, left);
    framePower(samples, left, power[stages]!);
    const fresh = power.slice();
    const predict = (state: typeof lowState, band: number, values: Float32Array) => {
      fresh[band] = innovationPower(state, values, left, power[band]!, perFrame, quietPower);
    };
    predict(upperState, stages - 1, half);
    predict(lowState, stages, samples);
    return { power, fresh };
  }

  return { layout, inputHop, next };
}

/** Mean power of each frame, which `count` samples make up. */
function framePower(samples: Float32Array, count: number, power: Float32Array): void {
  const hop = count / power.length;
  let at = 0;
  for (let frame = 0; frame < power.length; frame++) {
    let sum = 0;
    for (let i = 0; i < hop; i++) {
      const x = samples[at++]!;
      sum += x * x;
    }
    power[frame] = sum / hop;
  }
}

import type { Source } from './source.ts';

/** How a recording of few bits was stored. */
export interface CoarseSamples {
  /** Between one value that a sample may have and the next, full scale 1. */
  readonly step: number;
  /** Whether what is softer than a step stands still, so that no noise hides the steps. */
  readonly still: boolean;
}

/** The step of 16 bits, in which what is no coarser is told. */
export const fineStep = 2 ** -15;
/**
 * Steps from that of 13 bits to that of 6 are coarse: soft sounds are a few steps high. Larger ones are no recording's.
 * Our judgement.
 */
const coarsest = 2 ** -5;
const leastCoarse = 2 ** -12;
/** Frames looked at, spread over the recording. */
const probes = 24;
const probeFrames = 4096;
/** So many samples alike never come where a noise of half a step or more hides the steps. */
const stillSamples = 96;

/**
 * The steps of a recording that was stored in 13 bits or fewer, or null for a finer one, which is known by its first
 * samples that aren't silent.
 *
 * @example coarseSamples(source) // { step: 1 / 128, still: true } for 8 bits without dither
 */
export function coarseSamples(source: Source): CoarseSamples | null {
  let step = 1;
  let longest = 0;
  for (let probe = 0; probe < probes; probe++) {
    const from = Math.floor((Math.max(0, source.length - probeFrames) * probe) / (probes - 1));
    for (let channel = 0; channel < source.channels; channel++) {
      let run = 0;
      let last = Number.NaN;
      for (const sample of source.read(channel, from, Math.min(source.length, from + probeFrames))) {
        while (sample % step !== 0) step /= 2;
        if (step < leastCoarse) return null;
        run = sample === last ? run + 1 : 1;
        last = sample;
        if (run > longest) longest = run;
      }
    }
  }
  return step > coarsest ? null : { step, still: longest >= stillSamples };
}

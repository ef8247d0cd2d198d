import { halfBandState, splitHalfBand } from '../signal/half-band.ts';
import { applyHighPass, highPass } from '../signal/high-pass.ts';

/** Below this, rumble and handling noise, Hz; our judgement from takes on pads and drums. */
export const strokesFromHz = 150;
/** Rates from here on are halved, Hz. */
const halvedFrom = 11_000;

/**
 * Leaves of samples at `rate` Hz the band in which strokes are measured, from 150 Hz to half the rate that is left: 5.5 to
 * 11 kHz, so up to about 3 kHz of recordings at 44.1 and 48 kHz, their halves and multiples, and 4 kHz of those at 8, 16 and
 * 32 kHz. In place: the first `count` samples of what comes, at the rate told.
 *
 * @example toStrokeBand(new Float32Array(4800), 48000) // { count: 600, rate: 6000 }
 */
export function toStrokeBand(
  samples: Float32Array,
  rate: number,
): { readonly count: number; readonly rate: number } {
  let count = samples.length & ~7;
  let halved = rate;
  while (halved >= halvedFrom) {
    splitHalfBand(halfBandState(), samples, count, samples, null);
    count >>= 1;
    halved /= 2;
  }
  applyHighPass(highPass(strokesFromHz, halved), samples, count);
  return { count, rate: halved };
}

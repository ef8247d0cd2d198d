import { quantile } from '../../../core/stats/quantile.ts';

/** How loud the place is before anybody plays. */
export interface RoomNoise {
  readonly verdict: 'quiet' | 'noisy' | 'silent' | 'too-short';
  /** Level between sounds, dBFS of the root mean square; −Infinity without a signal. */
  readonly noiseDb: number;
}

/** Above this taps 30 dB under an accent near full scale begin to drown. Our judgement. */
const noisyDb = -48;
/** Nothing but zeros: the microphone is off, or something gates it. */
const silentDb = -110;
const blockSeconds = 0.05;
const fewestBlocks = 10;

/**
 * Judges the noise of a place from some seconds in which nobody plays; the quieter half of the moments counts, so that
 * a cough doesn't.
 *
 * @example judgeRoom(new Float32Array(96000), 48000).verdict // 'silent'
 */
export function judgeRoom(samples: Float32Array, sampleRate: number): RoomNoise {
  const length = Math.round(blockSeconds * sampleRate);
  const powers: number[] = [];
  for (let from = 0; from + length <= samples.length; from += length) {
    const block = samples.subarray(from, from + length);
    const mean = block.reduce((sum, x) => sum + x, 0) / length;
    powers.push(block.reduce((sum, x) => sum + (x - mean) ** 2, 0) / length);
  }
  if (powers.length < fewestBlocks) return { verdict: 'too-short', noiseDb: Number.NaN };
  const noiseDb = 10 * Math.log10(quantile(powers, 0.25));
  if (noiseDb < silentDb) return { verdict: 'silent', noiseDb };
  return { verdict: noiseDb > noisyDb ? 'noisy' : 'quiet', noiseDb };
}

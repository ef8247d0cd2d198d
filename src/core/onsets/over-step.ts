import type { CoarseSamples } from '../signal/coarse-samples.ts';
import type { Stroke } from './stroke.ts';

/** A flicker between two values of a sample is no louder than this, dB of a sine as high as a step. */
const flickerDb = -3;
/** Evidence that a flicker doesn't come to, nats: on rendered takes of 8 bits to 23. */
const surely = 24;

/** The sounds without those that may be the flicker of coarse samples. */
export function overStep(sounds: readonly Stroke[], { step }: CoarseSamples): Stroke[] {
  const loudest = 20 * Math.log10(step) + flickerDb;
  return sounds.filter(
    ({ sound, levelDb, evidence }) => sound === 'click' || levelDb > loudest || evidence >= surely,
  );
}

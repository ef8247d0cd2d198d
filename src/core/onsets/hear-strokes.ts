import type { ClickTimes } from '../click/click-times.ts';
import { coarseSamples } from '../signal/coarse-samples.ts';
import { finiteSource } from '../signal/finite-source.ts';
import { lowestSampleRate } from '../signal/lowest-sample-rate.ts';
import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import { withStepNoise } from '../signal/step-noise.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { startListening } from './listening.ts';
import { overStep } from './over-step.ts';
import type { Hearing } from './stroke.ts';

/**
 * Finds the strokes of a recording, their times and levels, and the clicks of a metronome, in order of time. Uses
 * nothing but the sound: neither exercise nor tempo. Linear in length. `put`: clicks that
 * are known to have been put out while it was recorded. `tell` hears how far it has come. Throws a RangeError
 * for a sample rate below `lowestSampleRate`.
 */
export function hearStrokes(recording: Source, tell?: WorkTold, put?: readonly ClickTimes[]): Hearing {
  const { sampleRate } = recording;
  if (!(sampleRate >= lowestSampleRate))
    throw new RangeError(
      `No strokes can be found at ${sampleRate} Hz: ${lowestSampleRate} Hz at least are needed.`,
    );
  const source = finiteSource(recording);
  const coarse = coarseSamples(source);
  const hearing = startListening().end(pickup(withStepNoise(source, coarse)), tell, put);
  tell?.('listening', 1);
  return coarse === null || !coarse.still
    ? hearing
    : { ...hearing, sounds: overStep(hearing.sounds, coarse) };
}

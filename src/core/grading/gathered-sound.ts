import { followSound, type SoundFeatures } from '../recording-check/sound-pass.ts';
import { followPeaks, type PeakCourse } from '../signal/peak-course.ts';
import type { Source } from '../signal/source.ts';

/** What grading needs of the samples by themselves, whatever is heard in them. */
export interface GatheredSound {
  readonly features: SoundFeatures;
  readonly peaks: PeakCourse;
}

/** Gathers that while a recording of one channel comes, so that it needn't be read once more at its end. */
interface SoundGathering {
  /** Goes on with a recording that is the same as before and longer. */
  goOn(recording: Source): void;
  end(recording: Source): GatheredSound;
}

/**
 * Begins to gather what grading needs of the samples.
 *
 * @example gradeHearing(source, hearing, sheet, { gathered: gatherSound(48000).end(source) }) // as without it
 */
export function gatherSound(sampleRate: number): SoundGathering {
  const features = followSound(sampleRate, 0);
  const peaks = followPeaks();
  return {
    goOn(recording) {
      features.goOn(recording);
      peaks(recording);
    },
    end: (recording) => ({ features: features.end(recording), peaks: peaks(recording) }),
  };
}

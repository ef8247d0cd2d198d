import type { Source } from '../../core/signal/source.ts';
import type { Mp3Follower } from '../../formats/write-mp3.ts';

/** A recording written as an MP3 for its report while it comes. */
interface Mp3Along {
  goOn(recording: Source): void;
  /** The whole of it; null where the encoder could not be had. */
  end(recording: Source): Uint8Array | null;
}

/** Begins at once; the encoder catches up when it is loaded. */
export function mp3Along(sampleRate: number): Mp3Along {
  let follower: Mp3Follower | null = null;
  const without = () => {
    follower = null;
  };
  void import('../../formats/write-mp3.ts')
    .then(({ followMp3 }) => followMp3(sampleRate))
    .then((one) => {
      follower = one;
    }, without);
  const tried = <T>(work: () => T): T | null => {
    try {
      return work();
    } catch {
      // The report makes its own then, or says why it can't.
      without();
      return null;
    }
  };
  return {
    goOn: (recording) => void tried(() => follower?.goOn(recording)),
    end: (recording) => tried(() => follower?.end(recording) ?? null),
  };
}

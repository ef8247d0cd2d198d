import type { HeardRecording } from './heard-recording.ts';

/** A sound's own part, s: from a little before its onset until it has mostly died away. */
const own = { before: 0.008, after: 0.07 };

/** For each frame 1 where no sound has just begun, 0 elsewhere. */
export function quietFrames({ sound, hearing }: Pick<HeardRecording, 'sound' | 'hearing'>): Uint8Array {
  const quiet = new Uint8Array(sound.mean.length).fill(1);
  for (const { time } of hearing.sounds)
    quiet.fill(
      0,
      Math.max(0, Math.floor((time - own.before) * sound.frameRate)),
      Math.ceil((time + own.after) * sound.frameRate),
    );
  return quiet;
}

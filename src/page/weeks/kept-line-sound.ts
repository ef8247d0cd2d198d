import type { WeakLine } from '../../core/progress/weakest-lines.ts';
import { lineStretch } from '../../core/result/line-stretch.ts';
import type { LibraryClient } from '../../library/library-calls.ts';
import { sharedEngine } from '../engine/shared-engine.ts';

/**
 * The sound of one line of a kept take as a data URI of an MP3; null where its recording isn't kept or can't be read.
 */
export async function keptLineSound(
  library: LibraryClient,
  { takeId, place }: Pick<WeakLine, 'takeId' | 'place'>,
): Promise<string | null> {
  const { take, result } = await library.readTake(takeId);
  const stretch = lineStretch(result, place, take.partFrom ?? 0);
  if (stretch === null || take.audioHash === null) return null;
  // What is wrong with a recording is told where its take is opened; the page for the lesson doesn't fail for it.
  const bytes = await library.readAudio(takeId).catch(() => null);
  return bytes === null ? null : sharedEngine().mp3({ bytes }, stretch);
}

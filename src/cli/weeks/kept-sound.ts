import { cutSource } from '../../core/signal/cut-source.ts';
import { audioFile } from '../../library/folder-audio-store.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { openTake } from '../open-take.ts';
import { longestInside } from '../sound-for-report.ts';

/**
 * The sound of a kept take, or a stretch of it (s), as a data URI of an MP3. Null where no recording is kept, or where
 * so much of it doesn't go inside a page.
 */
export async function keptSound(
  { folder }: FolderLibrary,
  audioHash: string | null,
  part?: readonly [from: number, to: number],
): Promise<string | null> {
  if (audioHash === null) return null;
  const recording = await openTake(audioFile(folder, audioHash));
  try {
    const { source } = recording;
    const heard = part === undefined ? source : cutSource(source, { from: part[0], to: part[1] });
    if (heard.length === 0 || heard.length > longestInside * heard.sampleRate) return null;
    const { mp3Of } = await import('../../formats/write-mp3.ts');
    return `data:audio/mpeg;base64,${Buffer.from(await mp3Of(heard)).toString('base64')}`;
  } finally {
    recording.close();
  }
}

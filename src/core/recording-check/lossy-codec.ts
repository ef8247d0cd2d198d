import type { Finding, HeardRecording } from './heard-recording.ts';
import type { QuietCourse } from './quiet-course.ts';
import { allLevels } from './spoiled-measures.ts';

/**
 * Sound rises before strokes by so much, dB, only where blocks of it were treated as one. MP3 at 64 kbit/s comes to 2.4 at
 * most and harms nothing; noise suppression that makes figures wrong begins at 3.7 (`reports/recording-check.md`).
 */
const leastDb = 3;

/** How far the quiet rises just before strokes, dB; NaN where there are too few. */
const preEchoDb = ({ beforeDb, earlierDb }: QuietCourse): number => beforeDb - earlierDb;

/**
 * A lossy codec, or another processing in blocks such as noise suppression: a faint echo comes before the stroke, which
 * nothing in the air does.
 */
export function lossyCodec({ quiet }: HeardRecording): Finding | null {
  const echoDb = preEchoDb(quiet);
  if (!(echoDb >= leastDb)) return null;
  return { code: 'lossy-codec', facts: { echoDb }, spoils: [...allLevels] };
}

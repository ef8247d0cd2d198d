import { pickup } from '../signal/pickup.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { hissSteps } from './hiss-steps.ts';
import type { QuietCourse } from './quiet-course.ts';
import { allLevels, tapLevels } from './spoiled-measures.ts';

/**
 * Sound rises before strokes by so much, dB, only where blocks of it were treated as one. MP3 at 64 kbit/s comes to 2.4
 * at most and harms nothing; noise suppression that makes figures wrong begins at 3.7 (`reports/recording-check.md`).
 */
const leastDb = 3;
/**
 * The hiss goes up and down by so many times what chance does: worth a word, and where soft strokes lose of their
 * level. Clean takes come to 1.57 (a snare) at most, Opus at 24 kbit/s to 1.1 to 4.1 (`reports/recording-check.md`).
 */
const steps = { said: 1.8, levels: 3 };

/** How far the quiet rises just before strokes, dB; NaN where there are too few. */
const preEchoDb = ({ beforeDb, earlierDb }: QuietCourse): number => beforeDb - earlierDb;

/**
 * A lossy codec, or another processing in blocks such as noise suppression: a faint echo comes before the stroke, or
 * the hiss changes its loudness from block to block, neither of which anything in the air does.
 */
export function lossyCodec({ quiet, source, hearing }: HeardRecording): Finding | null {
  const echoDb = preEchoDb(quiet);
  const hasEcho = echoDb >= leastDb;
  const hissTimes = hissSteps(pickup(source), hearing.sounds);
  if (!hasEcho && !(hissTimes >= steps.said)) return null;
  const spoilt = hissTimes >= steps.levels ? tapLevels : [];
  return {
    code: 'lossy-codec',
    facts: hasEcho ? { echoDb } : { hissTimes },
    spoils: [...(hasEcho ? allLevels : spoilt)],
  };
}

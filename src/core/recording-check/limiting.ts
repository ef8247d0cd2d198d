import type { Finding, HeardRecording } from './heard-recording.ts';
import { levelRecoveryDb } from './level-recovery.ts';
import { hasHoles } from './spectral-holes.ts';
import { allLevels } from './spoiled-measures.ts';

/** Beyond chance, dB: rendered takes whose figures a limiter makes wrong come to 2 and more, clean ones to 0.1. */
const leastDb = 1.2;

/** A limiter: accents are held down as they come and let go while they die away, taps aren't. */
export function limiting(heard: HeardRecording): Finding | null {
  // What opens and closes bands changes how strokes die away, too.
  if (hasHoles(heard.unevenness)) return null;
  const gainsDb = levelRecoveryDb(heard);
  if (!(gainsDb >= leastDb)) return null;
  return { code: 'limited', facts: { gainsDb }, spoils: [...allLevels] };
}

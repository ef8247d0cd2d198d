import { mad, madToSd } from '../stats/mad.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { levelRecoveryDb } from './level-recovery.ts';
import { hasHoles } from './spectral-holes.ts';
import { allLevels } from './spoiled-measures.ts';

/** Beyond chance, dB: rendered takes whose figures a limiter makes wrong come to 2 and more, clean ones to 0.1. */
const leastDb = 1.2;

/**
 * A limiter makes accents alike as well, robust SD in dB: rendered takes that one held down came to 1.01 at most, those
 * without to 1.09 at least. Rim shots die away more slowly than taps, too, and scatter as the hand does.
 */
const mostScatterDb = 1.05;

/** A limiter: accents are held down as they come and let go while they die away, taps aren't. */
export function limiting(heard: HeardRecording): Finding | null {
  // What opens and closes bands changes how strokes die away, too, and coarse samples swallow the ends of taps.
  if (hasHoles(heard.unevenness) || heard.coarse !== null) return null;
  const gainsDb = levelRecoveryDb(heard);
  if (!(gainsDb >= leastDb)) return null;
  const accents = heard.performance.strokes.flatMap(({ slot, levelDb }) => (slot.accent ? [levelDb] : []));
  if (madToSd * mad(accents) > mostScatterDb) return null;
  return { code: 'limited', facts: { gainsDb }, spoils: [...allLevels] };
}

import type { Finding, HeardRecording } from './heard-recording.ts';
import type { Unevenness } from './spectral-unevenness.ts';
import { allLevels } from './spoiled-measures.ts';

/**
 * Unevenness, dB, from which on there are holes: rendered clean takes come to 4.9 to 5.2 in the hiss, and to 5.4 in the
 * levels' band where a tom rings. Suppression that makes levels wrong leaves 5.3 and more in both, packing that doesn't
 * holes in the hiss alone (`reports/recording-check.md`).
 */
const leastDb = { hiss: 5.28, levels: 5.4 };

/** Whether the quiet has holes at all. */
export const hasHoles = ({ hiss }: Unevenness): boolean => hiss >= leastDb.hiss;

/**
 * Holes in the spectrum of the quiet: noise suppression opens and closes single bands of it, and strong packing leaves
 * some out. Where they reach down to where levels are taken, soft strokes lose some of theirs.
 */
export function spectralHoles({ unevenness }: HeardRecording): Finding | null {
  if (!hasHoles(unevenness)) return null;
  const spoils = unevenness.levels >= leastDb.levels ? [...allLevels] : [];
  return { code: 'spectral-holes', facts: { unevenDb: unevenness.hiss }, spoils };
}

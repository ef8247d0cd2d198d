import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { allLevels, strokeCounts } from './spoiled-measures.ts';
import { stepNoiseAlone } from './step-noise-alone.ts';

/** Loud strokes stand less than this above the noise in a place too noisy for soft taps, dB. Our judgement. */
const leastDb = 32;
/** Less, and soft strokes drown: those that are left are the loud ones (`reports/recording-check.md`). */
const spoilingDb = 21;
const fewest = 4;

/** A noisy place or a microphone far away: loud strokes hardly leave room for soft ones above the noise. */
export function noiseFloor(heard: HeardRecording): Finding | null {
  if (stepNoiseAlone(heard)) return null;
  const { noiseDb, performance } = heard;
  const accents = performance.strokes.filter(({ slot }) => slot.accent);
  if (accents.length < fewest) return null;
  const accentDb = median(accents.map(({ levelDb }) => levelDb));
  const overDb = accentDb - noiseDb;
  if (!(overDb < leastDb)) return null;
  const spoils = overDb < spoilingDb ? [...new Set([...allLevels, ...strokeCounts])] : [];
  return { code: 'noisy', facts: { noiseDb, overDb }, spoils };
}

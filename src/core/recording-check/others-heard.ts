import { median } from '../stats/median.ts';
import { quantile } from '../stats/quantile.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { allLevels, strokeCounts, strokeTimes } from './spoiled-measures.ts';

/** A few may be anything. */
const fewest = 5;
/**
 * Others' upper quarter, mostly their accents, as loud as the taps hides taps and draws times away: in rendered takes three of 33
 * figures are wrong then, and hardly one where they are 5 dB softer (`reports/company.md`).
 */
const loudQuantile = 0.75;

/** Somebody else plays in the room: strokes that sound unlike the player's were left out. */
export function othersHeard({ others, performance }: HeardRecording): Finding | null {
  if (others.length < fewest) return null;
  const taps = performance.strokes.flatMap(({ slot, levelDb }) => (slot.accent ? [] : [levelDb]));
  const levels = others.map(({ levelDb }) => levelDb);
  const isLoud = taps.length > 0 && quantile(levels, loudQuantile) >= median(taps);
  const spoils = isLoud ? [...strokeCounts, ...strokeTimes, ...allLevels] : [...strokeCounts];
  return { code: 'others-heard', facts: { strokes: others.length, at: others[0]!.time }, spoils };
}

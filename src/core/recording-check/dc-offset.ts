import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';

/** From here on a recording's middle is off enough to be said, share of full scale; common practice is below 0.5 %. */
const leastShare = 0.01;
/** One frame in so many is looked at. */
const stride = 8;

/**
 * A steady displacement of the waveform: the median, since the thump of strokes leans to one side. It is taken off
 * before anything is measured, so it spoils nothing; it takes room from loud strokes.
 */
export function dcOffset({ channels }: HeardRecording): Finding | null {
  const most = channels
    .map(({ mean }) => (mean.length === 0 ? 0 : median(mean.filter((_, i) => i % stride === 0))))
    .reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (Math.abs(most) < leastShare) return null;
  return { code: 'dc-offset', facts: { percent: 100 * most }, spoils: [] };
}

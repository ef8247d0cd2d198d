import type { Finding, HeardRecording } from './heard-recording.ts';

/** From here on a recording's middle is off enough to be said, share of full scale; common practice is below 0.5 %. */
const leastShare = 0.01;

/**
 * A steady displacement of the waveform. It is taken off before anything is measured, so it spoils nothing; it takes
 * room from loud strokes.
 */
export function dcOffset({ channels }: HeardRecording): Finding | null {
  const most = channels
    .map(({ mean }) => (mean.length === 0 ? 0 : mean.reduce((sum, x) => sum + x, 0) / mean.length))
    .reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (Math.abs(most) < leastShare) return null;
  return { code: 'dc-offset', facts: { percent: 100 * most }, spoils: [] };
}

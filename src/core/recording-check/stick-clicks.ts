import type { Finding, HeardRecording } from './heard-recording.ts';

/** A single one may be anything. */
const fewest = 2;

/** Sticks struck together, as to count in: heard, and left out of the take. */
export function stickClicks({ hearing }: HeardRecording): Finding | null {
  const found = hearing.sounds.filter(({ sound }) => sound === 'stick-click');
  if (found.length < fewest) return null;
  return { code: 'stick-clicks', facts: { clicks: found.length, at: found[0]!.time }, spoils: [] };
}

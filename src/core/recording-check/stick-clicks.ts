import { changingClick } from './changing-click.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';

/** A single one may be anything. */
const fewest = 2;

/** Sticks struck together, as to count in: heard, and left out of the take. */
export function stickClicks(heard: HeardRecording): Finding | null {
  // What sounds like that then is the click.
  if (changingClick(heard) !== null) return null;
  const { hearing } = heard;
  const found = hearing.sounds.filter(({ sound }) => sound === 'stick-click');
  if (found.length < fewest) return null;
  return { code: 'stick-clicks', facts: { clicks: found.length, at: found[0]!.time }, spoils: [] };
}

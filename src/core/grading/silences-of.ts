import type { SilentStretch } from '../click-track/silent-stretches.ts';
import type { PlayedClick } from './click-to-hold-against.ts';

/**
 * Where a played click left the player alone, s of the recording: from the first beat that didn't sound to the next
 * that did. Without a measured delay they come too early by it, which moves their edges and nothing else.
 *
 * @example silencesOf({ times: [1, 2, 3, 4], audible: [true, false, false, true], … }) // [{ from: 2, to: 4 }]
 */
export function silencesOf(played: PlayedClick | undefined): SilentStretch[] {
  if (played?.audible === undefined) return [];
  const { times, audible } = played;
  const beat = times.length < 2 ? 0 : times.at(-1)! - times.at(-2)!;
  const silences: SilentStretch[] = [];
  times.forEach((from, i) => {
    if (audible[i] !== false) return;
    const to = times[i + 1] ?? from + beat;
    const before = silences.at(-1);
    if (before !== undefined && before.to === from) silences[silences.length - 1] = { ...before, to };
    else silences.push({ from, to });
  });
  return silences;
}

import type { Attack } from './click-seed.ts';

/**
 * Room for the player's device and the recorder to run apart from one click to the next, s. Measured on 12 takes with
 * clicks: half finds the same, twice loses a click in seven.
 */
export const wobble = 0.0005;
/**
 * What else may sound where a click is learned: before it and with it nothing (s), after it nothing but its room (dB).
 * Measured: half to twice of each finds alike.
 */
const clearance = { before: 0.1, together: 0.012, ahead: 0.0015, underDb: 20 };

/**
 * How long a click at `onset` is heard alone, s: nothing struck shortly before it or together with it, up to the next
 * attack that isn't so soft that it may be the room's own answer to the click. `attacks` in order of time; costs the
 * logarithm of their number.
 *
 * @example clearSeconds(1, [{ time: 1, levelDb: -20 }, { time: 1.4, levelDb: -20 }], 60) // 0.3985
 */
export function clearSeconds(onset: number, attacks: readonly Attack[], duration: number): number {
  let [low, high] = [0, attacks.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (attacks[middle]!.time > onset - clearance.before) high = middle;
    else low = middle + 1;
  }
  let own = low;
  while (own < attacks.length && attacks[own]!.time <= onset - wobble) own++;
  if (own === attacks.length || attacks[own]!.time >= onset + wobble) return 0;
  const loud = attacks[own]!.levelDb - clearance.underDb;
  let next = low;
  while (next < attacks.length && (next === own || attacks[next]!.levelDb <= loud)) next++;
  const until = attacks[next]?.time ?? duration;
  return until < onset + clearance.together ? 0 : until - onset - clearance.ahead;
}

import type { SilentBars } from './click-plan.ts';

/**
 * Tells of each bar, counted from 0 and asked in order of time, whether it is left to the player.
 *
 * @example Array.from('12345', (_, i) => silentBars({ heard: 1, lengths: [1, 2] })(i)) // no, yes, no, yes, yes
 */
export function silentBars(silence: SilentBars | null): (bar: number) => boolean {
  if (silence === null || silence.heard < 1) return () => false;
  const { heard, lengths } = silence;
  const ends: number[] = [];
  return (bar) => {
    while ((ends.at(-1) ?? 0) <= bar) {
      const length = Math.max(0, Math.round(lengths[ends.length] ?? lengths.at(-1) ?? 0));
      ends.push((ends.at(-1) ?? 0) + Math.round(heard) + length);
    }
    const round = ends.findIndex((end) => bar < end);
    return bar - (ends[round - 1] ?? 0) >= Math.round(heard);
  };
}

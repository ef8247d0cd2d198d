import type { Beat } from './sheet.ts';

const beginsBar = (beat: Beat, index: number) => index > 0 && beat.barBefore;

/**
 * The bar, counted from 0, that each beat lies in: by the bar lines where the notation has any between its beats,
 * otherwise by counting `beatsInBar`.
 *
 * @example barOfBeats(beats, 4) // [0, 0, 1] for 'RLR LRL | RLR'
 */
export function barOfBeats(beats: readonly Beat[], beatsInBar: number): readonly number[] {
  const barred = beats.some(beginsBar);
  let bar = 0;
  return beats.map((beat, index) => {
    if (beginsBar(beat, index)) bar += 1;
    return barred ? bar : Math.floor(index / beatsInBar);
  });
}

/**
 * Beats of the longest bar between bar lines, or null where there are none.
 *
 * @example longestBar(beats) // 2 for 'RLR LRL | RLR'
 */
export function longestBar(beats: readonly Beat[]): number | null {
  if (!beats.some(beginsBar)) return null;
  const lengths: number[] = [];
  for (const bar of barOfBeats(beats, 1)) lengths[bar] = (lengths[bar] ?? 0) + 1;
  return Math.max(...lengths);
}

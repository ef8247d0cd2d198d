import { median } from '../stats/median.ts';
import type { MainSlots } from './main-slots.ts';

/** The strokes that may be main strokes: of several close together only the loudest. */
export interface ThinStrokes {
  /** Indices of the strokes kept, in order of time. */
  readonly kept: Int32Array;
  /** For each stroke the place in `kept` of the first one kept after it. */
  readonly next: Int32Array;
  /** Median interval between strokes kept, s. */
  readonly spacing: number;
}

/** Strokes nearer than this belong together as stroke and bounce or grace note, s (common practice). */
const together = 0.08;
/** At most this share of the written spacing, so that fast sheets stay whole (our judgement). */
const shareOfSpacing = 0.35;

/** Drops bounces and grace notes before the search for a tempo: of close strokes the loudest stays. */
export const thinStrokes = (times: Float64Array, levels: Float64Array, main: MainSlots): ThinStrokes => {
  const asked = Array.from(main.room, (room, i) => room * (main.asked[main.line[i]!] ?? Number.NaN));
  const written = asked.filter(Number.isFinite);
  const nearest = Math.min(together, written.length > 0 ? shareOfSpacing * median(written) : 0.05);
  const kept: number[] = [];
  for (let j = 0; j < times.length; j++) {
    const last = kept[kept.length - 1];
    if (last === undefined || times[j]! - times[last]! >= nearest) kept.push(j);
    else if (levels[j]! > levels[last]!) kept[kept.length - 1] = j;
  }
  const next = new Int32Array(times.length);
  let place = 0;
  for (let j = 0; j < times.length; j++) {
    while (place < kept.length && kept[place]! <= j) place++;
    next[j] = place;
  }
  const intervals = kept.slice(1).map((j, i) => times[j]! - times[kept[i]!]!);
  const spacing = intervals.length > 0 ? median(intervals) : 0.2;
  return { kept: Int32Array.from(kept), next, spacing };
};

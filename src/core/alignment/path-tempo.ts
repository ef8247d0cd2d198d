import { median } from '../stats/median.ts';
import type { PathStep } from './find-path.ts';
import type { MainSlots } from './main-slots.ts';

/** Fewer intervals than this don't tell a line's tempo (our judgement). */
const fewest = 8;

/** Seconds per beat of each line, as the first search found it; null where it found too little. */
export const temposOnPath = (
  path: readonly PathStep[],
  main: MainSlots,
  times: Float64Array,
): (number | null)[] =>
  main.asked.map((_, line) => {
    const ratios: number[] = [];
    for (let i = 1; i < path.length; i++) {
      const [a, b] = [path[i - 1]!, path[i]!];
      if (b.kind !== 'next' || main.line[a.main] !== line || main.line[b.main] !== line) continue;
      ratios.push((times[b.stroke]! - times[a.stroke]!) / (main.beat[b.main]! - main.beat[a.main]!));
    }
    return ratios.length >= fewest ? median(ratios) : null;
  });

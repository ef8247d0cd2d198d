import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import type { PathStep } from './find-path.ts';
import type { MainSlots } from './main-slots.ts';

/** Scatter assumed before a take is known, as a share of a slot's space (our judgement). */
export const firstScatter = 0.07;
/** Bounds of what is believed afterwards, and the fewest bends that tell it (our judgement). */
const bounds = { least: 0.025, most: 0.13 };
const fewest = 8;
/** The search allows for this much more than it found: strokes it lost were the farthest (our judgement). */
const allowance = 1.3;

/**
 * Robust scatter of the strokes on a path, as a share of the space they have, from the bend of each three in a row:
 * how far the middle one lies off the line through the other two. Even jitter of SD σ bends by σ√1.5.
 */
export const scatterOnPath = (path: readonly PathStep[], main: MainSlots, times: Float64Array): number => {
  const bends: number[] = [];
  for (let i = 2; i < path.length; i++) {
    const [a, b, c] = [path[i - 2]!, path[i - 1]!, path[i]!];
    if (b.kind !== 'next' || c.kind !== 'next' || main.line[a.main] !== main.line[c.main]) continue;
    const step = main.beat[c.main]! - main.beat[a.main]!;
    const period = (times[c.stroke]! - times[a.stroke]!) / step;
    const due = times[a.stroke]! + (main.beat[b.main]! - main.beat[a.main]!) * period;
    bends.push(Math.abs(times[b.stroke]! - due) / (main.space[b.main]! * period));
  }
  if (bends.length < fewest) return firstScatter;
  const spread = (madToSd * median(bends)) / Math.sqrt(1.5);
  return Math.min(bounds.most, Math.max(bounds.least, allowance * spread));
};

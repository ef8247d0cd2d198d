import { kendallVariance } from './mann-kendall.ts';
import { median } from './median.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Robust straight line with the interval of its slope. */
interface RobustLine {
  readonly slope: number;
  /** median(y) − slope · median(x) */
  readonly intercept: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Median of the slopes of all pairs with different x (Theil 1950), with Sen's rank interval (1968) at `confidence`.
 * O(n²) time and memory: meant for up to about 1,000 points. Throws RangeError when no two x differ.
 *
 * @example theilSen([0, 1, 2], [1, 3, 5]).slope // 2
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>, confidence = 0.95): RobustLine {
  const n = x.length;
  const all = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const dx = x[j]! - x[i]!;
      if (dx !== 0) all[count++] = (y[j]! - y[i]!) / dx;
    }
  }
  if (count === 0) throw new RangeError('a line needs two different x');
  const slopes = all.subarray(0, count).sort();
  const half = normalQuantile((1 + confidence) / 2) * Math.sqrt(kendallVariance(y));
  const from = Math.max(0, Math.round((count - half) / 2) - 1);
  const to = Math.min(count - 1, Math.round((count + half) / 2));
  const slope = median(slopes);
  return { slope, intercept: median(y) - slope * median(x), low: slopes[from]!, high: slopes[to]! };
}

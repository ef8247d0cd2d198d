import { ownVariances } from './own-variances.ts';
import type { TimingModel } from './timing-model.ts';

export interface PartVariance {
  /** Variance of the part's timing over that of the whole take. */
  readonly relative: number;
  /** Share of the part's degrees of freedom that are left: taking out what others put in costs some. */
  readonly degrees: number;
}

/**
 * How parts of a take are timed beside all of it. `parts` are indices of strokes; those that aren't judged don't count.
 * Parts whose strokes take turns, such as hands, are `interleaved`: each is freed of what the others put into the line
 * of the moment.
 *
 * @example partVariances(timing, [[0, 2, 4], [1, 3, 5]], { interleaved: true })[0] // { relative: 1, degrees: 1 } for hands alike
 */
export function partVariances(
  timing: TimingModel,
  parts: readonly (readonly number[])[],
  { interleaved }: { readonly interleaved: boolean },
): PartVariance[] {
  const { judged, residual, scaledResidual, count } = timing;
  const squaresOf = (part: Iterable<number>) => {
    let squares = 0;
    let strokes = 0;
    for (const i of part) {
      if (judged[i] === 0) continue;
      squares += scaledResidual[i]! ** 2;
      strokes++;
    }
    return squares / Math.max(1, strokes);
  };
  const over = (part: number, whole: number) => (whole > 0 ? part / whole : 0);
  const whole = squaresOf(judged.keys());
  const plain = parts.map((part) => over(squaresOf(part), whole));
  if (!interleaved) return plain.map((relative) => ({ relative, degrees: 1 }));

  // Strokes that belong to no part, such as those of a hand in doubt, are one more.
  const groups = parts.length + 1;
  const group = Int32Array.from(judged, (one) => (one === 1 ? parts.length : -1));
  parts.forEach((part, g) => {
    for (const i of part) if (judged[i] === 1) group[i] = g;
  });
  const shares = timing.residualShares(group, groups);
  const own = ownVariances({ squares: residual.map((r) => r * r), shares, group, groups });
  const pooled = group.reduce((sum, g) => sum + (g < 0 ? 0 : own[g]!), 0) / count;
  return plain.map((mixed, g) => {
    const relative = over(own[g]!, pooled);
    // The difference of two variances scatters like the larger one.
    return { relative, degrees: mixed > 0 ? Math.min(1, relative / mixed) ** 2 : 1 };
  });
}

import { autocorrelation } from '../stats/autocorrelation.ts';
import { normalCdf } from '../stats/normal-cdf.ts';
import { halfWindow } from './local-lines.ts';
import type { TimingModel } from './timing-model.ts';
import { strayAt } from './timing-strays.ts';

/** Variance of strokes round their local line. */
interface Scatter {
  /** s² */
  readonly variance: number;
  /** Degrees of freedom of a chi-square interval. */
  readonly degrees: number;
}

/** Share of a normal variance that is left once values further than `strayAt` standard deviations off are put aside. */
const shareKept =
  1 - (2 * strayAt * Math.exp(-(strayAt ** 2) / 2)) / Math.sqrt(2 * Math.PI) / (2 * normalCdf(strayAt) - 1);

/** Residual sum of squares round the line through the judged strokes from `low` to `high`, and its n − 2. */
function aroundLine({ position, withoutHabits, judged }: TimingModel, low: number, high: number) {
  let n = 0;
  let meanX = 0;
  let meanY = 0;
  for (let i = low; i <= high; i++) {
    if (judged[i] === 0) continue;
    n++;
    meanX += position[i]!;
    meanY += withoutHabits[i]!;
  }
  meanX /= Math.max(1, n);
  meanY /= Math.max(1, n);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = low; i <= high; i++) {
    if (judged[i] === 0) continue;
    const x = position[i]! - meanX;
    const y = withoutHabits[i]! - meanY;
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  return { squares: xx > 0 ? Math.max(0, yy - (xy * xy) / xx) : 0, free: n - 2 };
}

/** A loose line among steady ones comes to 8; our judgement, kept in simulations. */
const mostKurtosis = 10;

/** Fourth moment over squared variance, less 3: how much heavier than normal the tails are, 0 … 10. */
function excessKurtosis(values: readonly number[]): number {
  const second = values.reduce((sum, v) => sum + v * v, 0) / values.length;
  const fourth = values.reduce((sum, v) => sum + v ** 4, 0) / values.length;
  return second > 0 ? Math.min(mostKurtosis, Math.max(0, fourth / (second * second) - 3)) : 0;
}

/**
 * Scatter round the local tempo with habits taken out: Σ squares / Σ (n − 2) over every full window of four beats,
 * divided by 1 − 1.1 p/n for the p habits fitted and by the share of a normal variance that putting strays aside
 * leaves. Independent jitter of SD σ gives σ²; a slow wander gives the same at any length of take. The window is part
 * of the definition.
 *
 * Degrees of freedom: n − 3 a stretch shrunk by the residuals' squared autocorrelations up to half a window (Bartlett
 * 1946, quoted from memory) and by their kurtosis, at most 0.82 n − 6, the bound found in simulations of players.
 */
export function windowScatter(timing: TimingModel): Scatter {
  const { position, stretch, judged, scaledResidual, count, fit, memory } = timing;
  let squares = 0;
  let free = 0;
  let stretches = 0;
  const last = position.length - 1;
  for (let start = 0; start <= last; ) {
    let end = start;
    while (end < last && stretch[end + 1] === stretch[start]) end++;
    const before = free;
    const add = (low: number, high: number) => {
      const window = aroundLine(timing, low, high);
      if (window.free < 2) return;
      squares += window.squares;
      free += window.free;
    };
    const span = position[end]! - position[start]!;
    if (span < 2 * halfWindow) add(start, end);
    else {
      let low = start;
      let high = start;
      for (let i = start; i <= end; i++) {
        if (position[i]! - position[start]! < halfWindow - 1e-6) continue;
        if (position[end]! - position[i]! < halfWindow - 1e-6) break;
        while (position[low]! < position[i]! - halfWindow - 1e-6) low++;
        while (high < end && position[high + 1]! <= position[i]! + halfWindow + 1e-6) high++;
        add(low, high);
      }
    }
    if (free > before) stretches++;
    start = end + 1;
  }
  const residuals = [...scaledResidual].filter((_, i) => judged[i] === 1);
  let memoryOfSquares = 0;
  for (let k = 1; k <= memory; k++) {
    memoryOfSquares += Math.max(0, autocorrelation(residuals, k) ** 2 - 1 / count);
  }
  const plain = Math.min(
    (count - 3 * stretches) / (1 + 2 * memoryOfSquares),
    0.82 * count - memory * stretches,
  );
  const degrees = 1 / (1 / Math.max(3, plain) + excessKurtosis(residuals) / (2 * count));
  const habits = Math.min(0.5, (1.1 * fit.kept.length) / count);
  return { variance: free > 0 ? squares / free / (1 - habits) / shareKept : 0, degrees };
}

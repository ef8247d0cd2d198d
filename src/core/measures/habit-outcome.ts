import type { Outcome } from '../result/take-result.ts';
import { type Contrast, habitContrast } from './habit-contrast.ts';
import { measured } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import type { TimingModel } from './timing-model.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Outcome of a habit, ms, pointing at those strokes of it that lie furthest in its direction. */
export function habitOutcome({
  performance,
  timing,
  contrast,
  direction,
}: {
  readonly performance: Performance;
  readonly timing: TimingModel;
  readonly contrast: Contrast;
  /** 1 for strokes that a positive habit makes late, −1 for those it makes early, 0 for those outside it. */
  readonly direction: (stroke: PlayedStroke) => number;
}): Outcome {
  const { value, low, high } = habitContrast(timing, contrast);
  const own = performance.strokes.filter((stroke, i) => timing.judged[i] === 1 && direction(stroke) !== 0);
  const clear = low * high > 0;
  return measured({
    value: value * 1000,
    low: low * 1000,
    high: high * 1000,
    strokes: Math.max(1, own.length),
    pointsAt: clear
      ? worstStrokes(performance.strokes, (stroke, i) =>
          timing.judged[i] === 1 ? Math.sign(value) * direction(stroke) * timing.deviation[i]! : 0,
        )
      : [],
  });
}

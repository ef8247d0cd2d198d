import { studentTQuantile } from '../stats/student-t-quantile.ts';
import type { SilentStretch } from './silent-stretches.ts';

/** A stroke with its place: when it came, s of the recording, and when it was due, s of the click track. */
export interface DueStroke {
  readonly time: number;
  readonly due: number;
  /** s of a beat there. */
  readonly beatSeconds: number;
}

/** How far the beat wanders for each beat without a click; positive is slower. With its 95 % interval, ms. */
export interface SilentWander {
  readonly msPerBeat: number;
  readonly low: number;
  readonly high: number;
  /** Beats without a click that it rests on. */
  readonly beats: number;
}

/** Strokes below which a stretch's line isn't drawn. Our judgement. */
const fewest = 4;

/** Silences below which nothing can be said of how they differ. Our judgement. */
const fewestStretches = 3;

interface Slope {
  readonly slope: number;
  readonly beats: number;
}

/** Lateness against beats in one stretch by least squares; empty where too little was played in it. */
function slopeIn(strokes: readonly DueStroke[], { from, to }: SilentStretch): Slope[] {
  const inside = strokes.filter(({ due }) => due > from - 1e-9 && due < to - 1e-9);
  if (inside.length < fewest) return [];
  const x = inside.map(({ due, beatSeconds }) => (due - from) / beatSeconds);
  const y = inside.map(({ time, due }) => 1000 * (time - due));
  const [mx, my] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
  if (sxx === 0) return [];
  const sxy = x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0);
  return [{ slope: sxy / sxx, beats: Math.round((to - from) / inside[0]!.beatSeconds) }];
}

/**
 * Wander per silent beat: the mean over all stretches without a click, weighted by their beats, of the slope of lateness
 * against beats. Within a stretch each stroke goes on from the one before, so that not strokes but stretches are
 * independent: t interval over their slopes, one degree of freedom less than there are stretches. Only differences
 * within a stretch count, so the delay between track and recording cancels. Null with fewer than three stretches.
 *
 * @example wanderInSilence(strokes, silentStretches(plan))?.msPerBeat // 3.2: each silent beat comes 3.2 ms later
 */
export function wanderInSilence(
  strokes: readonly DueStroke[],
  stretches: readonly SilentStretch[],
): SilentWander | null {
  const slopes = stretches.flatMap((stretch) => slopeIn(strokes, stretch));
  const count = slopes.length;
  if (count < fewestStretches) return null;
  const beats = slopes.reduce((sum, one) => sum + one.beats, 0);
  const slope = slopes.reduce((sum, one) => sum + one.beats * one.slope, 0) / beats;
  const squares = slopes.reduce((sum, one) => sum + (one.beats * (one.slope - slope)) ** 2, 0);
  const se = Math.sqrt((squares * count) / (count - 1)) / beats;
  const half = studentTQuantile(0.975, count - 1) * se;
  return { msPerBeat: slope, low: slope - half, high: slope + half, beats };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

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

/**
 * Wander per silent beat: the common slope of lateness against beats over all stretches without a click, each with a level
 * of its own, by least squares; t interval with n − stretches − 1 degrees of freedom. Only differences within a stretch
 * count, so the delay between track and recording cancels. Null where too little was played in silence.
 *
 * @example wanderInSilence(strokes, silentStretches(plan))?.msPerBeat // 3.2: each silent beat comes 3.2 ms later
 */
export function wanderInSilence(
  strokes: readonly DueStroke[],
  stretches: readonly SilentStretch[],
): SilentWander | null {
  let [sxx, sxy, syy, count, groups, beats] = [0, 0, 0, 0, 0, 0];
  for (const { from, to } of stretches) {
    const inside = strokes.filter(({ due }) => due > from - 1e-9 && due < to - 1e-9);
    if (inside.length < fewest) continue;
    const x = inside.map(({ due, beatSeconds }) => (due - from) / beatSeconds);
    const y = inside.map(({ time, due }) => 1000 * (time - due));
    const [mx, my] = [mean(x), mean(y)];
    x.forEach((value, i) => {
      sxx += (value - mx) ** 2;
      sxy += (value - mx) * (y[i]! - my);
      syy += (y[i]! - my) ** 2;
    });
    count += inside.length;
    groups += 1;
    beats += Math.round((to - from) / inside[0]!.beatSeconds);
  }
  const freedom = count - groups - 1;
  if (freedom < 2 || sxx === 0) return null;
  const slope = sxy / sxx;
  const residual = Math.max(0, syy - slope * sxy) / freedom;
  const half = studentTQuantile(0.975, freedom) * Math.sqrt(residual / sxx);
  return { msPerBeat: slope, low: slope - half, high: slope + half, beats };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

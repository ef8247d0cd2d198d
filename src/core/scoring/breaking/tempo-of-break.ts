import { isotonicFall } from '../../stats/isotonic-fall.ts';
import { normalQuantile } from '../../stats/normal-quantile.ts';
import { nearlyScore } from '../score-curve.ts';

/** One line's score of one dimension, with its 95 % interval, at the line's tempo. */
export interface ScoreAtTempo {
  readonly bpm: number;
  readonly score: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Where a dimension breaks: `broke` at the tempo `bpm`; `held` up to the fastest line, `bpm`, so that it breaks beyond;
 * or `from-the-start`: in the slowest line, `bpm`, already. The 95 % interval lies from `low` to `high`; an end
 * that the take can't tell, since it may lie under the slowest line or over the fastest, is null.
 */
interface TempoOfBreak {
  readonly state: 'broke' | 'held' | 'from-the-start';
  readonly bpm: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** Fewest lines that can show where something breaks. Our judgement. */
export const fewestTempos = 4;

/** Loss of likelihood beyond which a tempo isn't likely: chi square of one degree at 95 %; coverage as simulated. */
const unlikely = normalQuantile(0.975) ** 2;
const toSe = 1 / normalQuantile(0.975);
/** No line is surer than this, points: even a perfect one says something only to about that. Our judgement. */
const leastSe = 1;

/**
 * How far a score lies over the threshold (or, with a minus, under it) in standard errors of the side that faces it.
 */
function standing({ score, low, high }: ScoreAtTempo, threshold: number): number {
  const over = score >= threshold;
  const se = Math.max(leastSe, (over ? score - low : high - score) * toSe);
  return (score - threshold) / se;
}

/**
 * The tempo at which a dimension falls from "nearly there" to "not yet". The estimate is where the falling curve
 * nearest to the scores (isotonic regression) crosses the threshold, by a straight line between the two tempos. The
 * interval holds every gap between two tempos for which the scores on the wrong side of the threshold are no worse than
 * for the best gap by more than chi square's 3.84: lines before a break should lie over it, lines after it under it. It
 * says nothing of the curve's shape but that it falls. `points` in order of tempo, at least one.
 *
 * @example tempoOfBreak([{ bpm: 80, score: 90, low: 85, high: 95 }, …, { bpm: 120, score: 20, low: 15, high: 25 }])
 */
export function tempoOfBreak(points: readonly ScoreAtTempo[], threshold: number = nearlyScore): TempoOfBreak {
  const count = points.length;
  const z = points.map((point) => standing(point, threshold));
  const wrong = Array.from({ length: count + 1 }, (_, gap) =>
    z.reduce((sum, one, i) => sum + (i < gap ? Math.max(0, -one) : Math.max(0, one)) ** 2, 0),
  );
  const least = Math.min(...wrong);
  const likely = wrong.flatMap((loss, gap) => (loss - least <= unlikely ? [gap] : []));
  const first = likely[0]!;
  const last = likely.at(-1)!;
  const low = first === 0 ? null : points[first - 1]!.bpm;
  const high = last === count ? null : points[last]!.bpm;
  const curve = isotonicFall(
    points.map((point) => ({
      value: point.score,
      weight: 1 / Math.max(leastSe, ((point.high - point.low) * toSe) / 2) ** 2,
    })),
  );
  const broken = curve.findIndex((score) => score < threshold);
  if (broken < 0) return { state: 'held', bpm: points.at(-1)!.bpm, low, high: null };
  if (broken === 0) return { state: 'from-the-start', bpm: points[0]!.bpm, low: null, high };
  const [before, after] = [curve[broken - 1]!, curve[broken]!];
  const [slower, faster] = [points[broken - 1]!.bpm, points[broken]!.bpm];
  const bpm = slower + ((faster - slower) * (before - threshold)) / (before - after);
  return {
    state: 'broke',
    bpm,
    low: low === null ? null : Math.min(low, bpm),
    high: high === null ? null : Math.max(high, bpm),
  };
}

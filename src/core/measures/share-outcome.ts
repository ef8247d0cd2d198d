import type { Outcome } from '../result/take-result.ts';
import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { wilsonInterval } from '../stats/wilson-interval.ts';
import { measured } from './outcomes.ts';

/** How the range of a share is found. */
export const shareInterval =
  "Wilson, with the number of chances divided by how much faults cluster (1 to 4); Student's t of a third of the beats.";

/** Faults and chances for them in one beat. */
export interface BeatCount {
  readonly hits: number;
  readonly of: number;
}

/** Under three hits nothing can be said of how they cluster. These three: our judgement. */
const fewestToCluster = 3;
const largestDesignEffect = 4;
const beatsOfMemory = 3;

/**
 * Outcome of a share in per cent with Wilson's interval. Faults come in clusters: the number of chances is divided by
 * the design effect (Kish 1965, quoted from memory), the variance of the beats' counts with Bartlett weights over
 * three beats against the binomial's, between 1 and 4; Student's t of a third of the beats stands in for the normal.
 */
export function shareOutcome(
  beats: readonly BeatCount[],
  strokes: number,
  pointsAt: readonly number[],
): Outcome {
  const of = beats.reduce((sum, beat) => sum + beat.of, 0);
  const hits = beats.reduce((sum, beat) => sum + beat.hits, 0);
  const share = Math.min(1, hits / of);
  const binomial = of * share * (1 - share);
  const around = beats.map((beat) => beat.hits - share * beat.of);
  const effect =
    hits < fewestToCluster || binomial === 0
      ? 1
      : Math.min(largestDesignEffect, Math.max(1, bartlettVariance(around, beatsOfMemory) / binomial));
  const critical = studentTQuantile(0.975, Math.max(3, beats.length / 3));
  const { low, high } = wilsonInterval(share, of / effect, critical);
  return measured({ value: share * 100, low: low * 100, high: high * 100, strokes, pointsAt });
}

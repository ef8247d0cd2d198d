import type { Score, ScoreWord } from '../result/take-result.ts';

/** Score at the point called `secure`, and at the point called `nearly`. Our judgement. */
export const secureScore = 85;
export const nearlyScore = 60;

/** Where a measure is at its best: one value, or any value of a band. */
export type Perfect = number | { readonly min: number; readonly max: number };

/** The two points that fix a curve, as distances from perfect in the measure's own unit; 0 < secure < nearly. */
interface ControlPoints {
  readonly perfect: Perfect;
  readonly secure: number;
  readonly nearly: number;
}

/** Distance of a value from perfect, never negative; 0 anywhere inside a band. */
export function distanceFromPerfect(value: number, perfect: Perfect): number {
  if (typeof perfect === 'number') return Math.abs(value - perfect);
  return Math.max(perfect.min - value, value - perfect.max, 0);
}

/**
 * Score of a distance from perfect: `100 / (1 + (v/h)^k)`, with `h` and `k` such that the secure point scores 85 and
 * the nearly point 60: `k = ln((40/60)/(15/85)) / ln(nearly/secure)`, `h = nearly / (40/60)^(1/k)`. Falls from 100 at
 * perfect towards 0 and never reaches it. Own definition; the logistic curve in ln v.
 *
 * @example scoreOfDistance(7, { perfect: 0, secure: 5, nearly: 10 }) // 74.8 (k = 1.917, h = 12.35)
 */
export function scoreOfDistance(distance: number, { secure, nearly }: ControlPoints): number {
  if (distance <= 0) return 100;
  const oddsAtNearly = (100 - nearlyScore) / nearlyScore;
  const oddsAtSecure = (100 - secureScore) / secureScore;
  const k = Math.log(oddsAtNearly / oddsAtSecure) / Math.log(nearly / secure);
  const h = nearly / oddsAtNearly ** (1 / k);
  return 100 / (1 + (distance / h) ** k);
}

/** `secure` from 85, `nearly` from 60, `not-yet` below. The unrounded score decides, but for the last bits. */
export function wordOfScore(score: number): ScoreWord {
  const lastBits = 1e-9;
  if (score >= secureScore - lastBits) return 'secure';
  return score >= nearlyScore - lastBits ? 'nearly' : 'not-yet';
}

/**
 * A score as people see it: a whole number that has the score's own word, so that 84.7 shows as 84 and isn't "85,
 * nearly there".
 *
 * @example shownScore(84.7) // 84
 */
export function shownScore(score: number): number {
  const whole = Math.round(score);
  return wordOfScore(whole) === wordOfScore(score) ? whole : Math.floor(score + 1e-9);
}

/**
 * Score of a measured value, with the interval that the value's own interval spans on the curve. An interval that
 * holds a perfect value reaches 100 at its upper end.
 *
 * @example scoreOfValue({ value: 6, low: 5, high: 9 }, { perfect: { min: 8, max: 20 }, secure: 1, nearly: 3 })
 * // score 71.0, low 60, high 100: 6 dB is 2 dB short of the band, 5 dB is 3 short, 9 dB lies inside
 */
export function scoreOfValue(
  { value, low, high }: { readonly value: number; readonly low: number; readonly high: number },
  points: ControlPoints,
): Score {
  const { perfect } = points;
  const [from, to] = typeof perfect === 'number' ? [perfect, perfect] : [perfect.min, perfect.max];
  const holdsPerfect = low <= to && high >= from;
  const atLow = distanceFromPerfect(low, perfect);
  const atHigh = distanceFromPerfect(high, perfect);
  const score = scoreOfDistance(distanceFromPerfect(value, perfect), points);
  return {
    score,
    low: scoreOfDistance(Math.max(atLow, atHigh), points),
    high: scoreOfDistance(holdsPerfect ? 0 : Math.min(atLow, atHigh), points),
    word: wordOfScore(score),
  };
}

import type { Scope } from '../../result/take-result.ts';
import { holm } from '../../stats/holm.ts';
import { normalCdf } from '../../stats/normal-cdf.ts';
import { normalQuantile } from '../../stats/normal-quantile.ts';
import { studentTCdf } from '../../stats/student-t-cdf.ts';
import { studentTQuantile } from '../../stats/student-t-quantile.ts';
import { criterionTargets } from '../criterion-targets.ts';
import { type Measured, measuredOutcome } from '../find-measure.ts';
import type { AdviceInput } from './finding.ts';

/** A value that would still do: a claim says that the player's own lies beyond it. */
interface Claim {
  readonly outcome: Measured;
  /** Values from `least` to `most` do. */
  readonly least: number;
  readonly most: number;
  /** A spread or a share: what an interval says of it is even in its logarithm. */
  readonly byFactor?: boolean;
}

/** How much louder the tap after an accent may be, dB: a step of about 1 dB is just audible (quoted from memory). */
export const leakMayBe = 1;

/** Accents that may be lost, %: our judgement. */
export const accentsMayBeLost = 2;

const byFactor: readonly string[] = [
  'timing-spread-share',
  'tap-spread',
  'accent-spread',
  'missed-and-extra',
];
/** Changes from start to end and the sign that is a fault. */
const trends = [
  ['timing-spread-trend', 1],
  ['tap-level-trend', 1],
  ['ratio-trend', -1],
] as const;

/** Strokes that go for one independent piece in a habit's error, the least certain of all; see `habitDegrees`. */
const strokesAPiece = 6;
const fewestDegrees = 4;

/**
 * Chance (0 … 1) of a value so far beyond the bound, or further, were the player's own just at the bound, read off the
 * interval's half on that side: Student's t with as many degrees of freedom as the strokes of a habit leave, and for
 * spreads and shares the normal distribution of their logarithm. 1 where the value isn't beyond the bound.
 *
 * @example chanceOf({ outcome: { value: 6, low: 4, high: 8, strokes: 480, … }, least: 0, most: 4 }) // 0.025
 */
export function chanceOf({ outcome, least, most, byFactor: factor = false }: Claim): number {
  const { value, low, high, strokes } = outcome;
  if (value >= least && value <= most) return 1;
  const above = value > most;
  const [bound, edge] = above ? [most, low] : [least, high];
  if (factor && Math.min(value, bound, edge) > 0) {
    const ratio = Math.log(value / bound) / Math.log(value / edge);
    return normalCdf(-ratio * normalQuantile(0.975));
  }
  if (value === edge) return 0;
  const degrees = Math.max(fewestDegrees, strokes / strokesAPiece - 1);
  const ratio = (value - bound) / (value - edge);
  return studentTCdf(-ratio * studentTQuantile(0.975, degrees), degrees);
}

const keyOf = (id: string, { line, hand, partial, place, repeat }: Scope) =>
  [id, line, hand, partial, place, repeat].join(' ');

/**
 * Which measures are beyond what is secure when everything that advice looks at is asked at once: Holm's rule (1979)
 * over the rubric's criteria, the changes from start to end, the lost accents and the taps after accents, so that a
 * take in which everything is just secure is told of a fault in at most 5 of 100 cases. Each one's own 95 % interval
 * has to be beyond besides.
 */
export function sureClaims({ measures, lines, rubric }: AdviceInput): (id: string, scope?: Scope) => boolean {
  const keys: string[] = [];
  const chances: number[] = [];
  const ask = (id: string, scope: Scope, claim: Omit<Claim, 'outcome'>) => {
    const outcome = measuredOutcome(measures, id, scope);
    if (!outcome) return;
    keys.push(keyOf(id, scope));
    chances.push(chanceOf({ ...claim, outcome }));
  };
  for (const { criteria } of rubric.dimensions) {
    for (const criterion of criteria) {
      for (const { scope, perfect } of criterionTargets(criterion, lines)) {
        const [from, to] = typeof perfect === 'number' ? [perfect, perfect] : [perfect.min, perfect.max];
        const range = { least: from - criterion.secure, most: to + criterion.secure };
        ask(criterion.measure, scope, { ...range, byFactor: byFactor.includes(criterion.measure) });
      }
    }
  }
  for (const [id, sign] of trends) {
    ask(id, {}, sign > 0 ? { least: -Infinity, most: 0 } : { least: 0, most: Infinity });
  }
  ask('lost-accents', {}, { least: 0, most: accentsMayBeLost, byFactor: true });
  ask('after-accent-leak', {}, { least: -Infinity, most: leakMayBe });
  const corrected = holm(chances);
  const sure = new Set(keys.filter((_, i) => corrected[i]! <= 0.05));
  return (id, scope = {}) => sure.has(keyOf(id, scope));
}

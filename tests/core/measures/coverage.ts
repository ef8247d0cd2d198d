import type { Measure } from '../../../src/core/measures/measure.ts';
import type { Performance } from '../../../src/core/measures/performance.ts';
import type { MeasureResult, Scope } from '../../../src/core/result/take-result.ts';

type Measured = Extract<MeasureResult['outcome'], { state: 'measured' }>;

/** A measure's outcome for a scope; throws when the measure has no such result. */
export function outcomeOf(
  measure: Measure,
  performance: Performance,
  scope: Scope = {},
): MeasureResult['outcome'] {
  const wanted = JSON.stringify(scope);
  const result = measure.compute(performance).find((r) => JSON.stringify(r.scope) === wanted);
  if (!result) throw new Error(`${measure.id} has no result for ${wanted}`);
  return result.outcome;
}

/** The same, when it must be measured. */
export function figureOf(measure: Measure, performance: Performance, scope: Scope = {}): Measured {
  const outcome = outcomeOf(measure, performance, scope);
  if (outcome.state !== 'measured') throw new Error(`${measure.id}: ${JSON.stringify(outcome)}`);
  return outcome;
}

/** How often the interval holds the truth over seeded takes, and the mean of the values. */
export function coverage(
  runs: number,
  play: (seed: number) => Performance,
  truth: number,
  measure: Measure,
  scope: Scope = {},
): { readonly share: number; readonly mean: number; readonly measured: number } {
  let held = 0;
  let sum = 0;
  let measured = 0;
  for (let seed = 1; seed <= runs; seed++) {
    const outcome = outcomeOf(measure, play(seed), scope);
    if (outcome.state !== 'measured') continue;
    measured++;
    sum += outcome.value;
    if (outcome.low <= truth && truth <= outcome.high) held++;
  }
  return { share: held / measured, mean: sum / measured, measured };
}

/**
 * Bounds that a coverage of 92 to 98 % keeps in `runs` takes, two binomial standard errors allowed on either side.
 */
export function coverageBounds(runs: number): { readonly least: number; readonly most: number } {
  const error = (share: number) => 2 * Math.sqrt((share * (1 - share)) / runs);
  return { least: 0.92 - error(0.92), most: 0.98 + error(0.98) };
}

import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import type { TimingModel } from './timing-model.ts';

/** How the range of a habit is found. */
export const habitInterval =
  "Newey & West standard error over half a window of neighbours; Student's t, fewer degrees of freedom the more strokes a window holds.";

/** A weighted sum of the model's terms with its uncertainty, s. */
interface HabitEstimate {
  readonly value: number;
  readonly standardError: number;
  readonly degrees: number;
  readonly low: number;
  readonly high: number;
}

/** Weights by column id; those not named weigh nothing. */
export type Contrast = ReadonlyMap<string, number>;

/** Share of a term that may stay unexplained where strokes are missing (our judgement). */
const looseness = 0.05;

/** Whether the take can tell a contrast: the terms left out of the fit weigh as their expression by those kept does. */
export function canTell({ fit, columnIds }: TimingModel, contrast: Contrast): boolean {
  const weight = (at: number) => contrast.get(columnIds[at]!) ?? 0;
  return columnIds.every((_, at) => {
    const implied = fit.kept.reduce((sum, kept, k) => sum + weight(kept) * fit.expressed[at]![k]!, 0);
    return Math.abs(weight(at) - implied) < looseness;
  });
}

/** Degrees of freedom of a habit's standard error; from simulations of players. */
export const habitDegrees = ({ count, memory }: TimingModel): number => Math.max(2, count / memory - 1);

/**
 * A contrast's value and 95 % interval. Neighbouring residuals are alike, since players correct and local lines are
 * shared: the standard error is a sandwich with Bartlett weights (Newey & West 1987) over half a window, times
 * (n/(n − p))² for what the fit takes out of each residual (as MacKinnon & White 1985 do stroke by stroke), with
 * Student's t of n/memory − 1 degrees of freedom; memory and degrees from simulations of players.
 */
export function habitContrast(timing: TimingModel, contrast: Contrast): HabitEstimate {
  const { fit, columnIds, columns, residual, judged, stretch, count, memory } = timing;
  const weights = fit.kept.map((at) => contrast.get(columnIds[at]!) ?? 0);
  const pull = fit.inverse.map((row) => weights.reduce((sum, w, k) => sum + w * row[k]!, 0));
  const influence = residual.map((r, i) => {
    if (judged[i] === 0) return 0;
    return r * fit.kept.reduce((sum, at, k) => sum + pull[k]! * columns[at]![i]!, 0);
  });
  const value = fit.kept.reduce((sum, at, k) => sum + weights[k]! * fit.coefficients[at]!, 0);
  const spare = count / Math.max(1, count - fit.kept.length);
  const standardError = spare * Math.sqrt(bartlettVariance(influence, memory, stretch));
  const degrees = habitDegrees(timing);
  const half = studentTQuantile(0.975, degrees) * standardError;
  return { value, standardError, degrees, low: value - half, high: value + half };
}

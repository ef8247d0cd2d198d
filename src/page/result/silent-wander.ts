import { rounded } from '../../core/result/figures.ts';
import { sentence } from '../../core/result/sentences.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { measuredOutcome } from '../../core/scoring/find-measure.ts';

const ms = (value: number) => `${rounded(value)} ms`;

/**
 * How the beat moved while the click was silent, in words; null where it never was.
 *
 * @example wanderInWords(result) // 'Without the click each beat came 3.2 ms later (likely 1.0 to 5.4).'
 */
export function wanderInWords({ measures }: TakeResult): string | null {
  const found = measuredOutcome(measures, 'silent-wander');
  if (found === undefined) {
    const own = measures.find(({ id }) => id === 'silent-wander')?.outcome;
    return own?.state === 'not-measurable' ? sentence(own.reason) : null;
  }
  const { value, low, high } = found;
  const start = 'Without the click';
  if (low > 0)
    return `${start} each beat came ${ms(value)} later (likely ${rounded(low)} to ${rounded(high)}).`;
  if (high < 0)
    return `${start} each beat came ${ms(-value)} sooner (likely ${rounded(-high)} to ${rounded(-low)}).`;
  return `${start} the beat leaned neither way for sure: ${ms(value)} a beat, likely ${rounded(low)} to ${rounded(high)}; minus is sooner.`;
}

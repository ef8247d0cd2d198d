import type { Scope } from '../../result/take-result.ts';
import type { Measured } from '../find-measure.ts';

interface FigureFacts {
  readonly [name: string]: number | string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The figure and its interval as facts of a sentence, with the line (from 1) when it speaks of one line. */
export function figureFacts({ value, low, high }: Measured, scope: Scope = {}): FigureFacts {
  return { value, low, high, ...(scope.line === undefined ? {} : { line: scope.line + 1 }) };
}

/**
 * A signed figure as a size and a direction.
 *
 * @example −7 (−11 … −3) with names ['early', 'late'] // { direction: 'early', value: 7, low: 3, high: 11 }
 */
export function directedFacts(
  { value, low, high }: Pick<Measured, 'value' | 'low' | 'high'>,
  [below, above]: readonly [string, string],
): FigureFacts & { readonly direction: string } {
  return value < 0
    ? { direction: below, value: -value, low: -high, high: -low }
    : { direction: above, value, low, high };
}

import type { MeasureResult, TakeResult } from '../core/result/take-result.ts';

/** Value, bounds of the 95 % interval, and strokes behind it, by measure id. */
export type LineFigures = Readonly<Record<string, readonly [number, number, number, number]>>;

/** Measures kept for each line, so that weeks can be compared without opening every take. */
export const comparedMeasures: readonly string[] = [
  'timing-spread',
  'timing-spread-share',
  'placement',
  'placement-share',
  'accent-bend',
  'accent-bend-share',
  'hand-offset',
  'hand-offset-share',
  'hand-ratio-gap',
  'ioi-evenness',
  'tempo-error',
  'tempo-change',
  'accent-to-tap-ratio',
  'separation',
  'tap-ceiling',
  'tap-spread',
  'accent-spread',
  'after-accent-leak',
  'lost-accents',
  'missed-and-extra',
  'turned-accents',
];

/** Digits kept of a figure: finer than any interval. */
const digits = 6;

/**
 * The compared measures of one line of a take, where they were measured. A take of one line speaks of that line as a
 * whole.
 *
 * @example lineFigures(result, 0)['timing-spread'] // [11.6, 9.8, 14.1, 71]
 */
export function lineFigures(result: TakeResult, line: number): LineFigures {
  const alone = result.sheet.lines.length === 1;
  const figures: Record<string, readonly [number, number, number, number]> = {};
  for (const { id, scope, outcome } of result.measures) {
    if (outcome.state !== 'measured' || !comparedMeasures.includes(id)) continue;
    if (!speaksOf(scope, line, alone) || figures[id] !== undefined) continue;
    const { value, low, high, strokes } = outcome;
    figures[id] = [short(value), short(low), short(high), strokes];
  }
  return figures;
}

function speaksOf(scope: MeasureResult['scope'], line: number, alone: boolean): boolean {
  const keys = Object.keys(scope);
  return keys.length === 0 ? alone : keys.length === 1 && scope.line === line;
}

const short = (value: number): number => Number(value.toPrecision(digits));

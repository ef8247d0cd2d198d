import type { Scope } from '../core/result/take-result.ts';

/**
 * A measured value with its unit, rounded as far as it is worth reading.
 *
 * @example formatFigure(-3.14, 'ms') // '−3.1 ms'
 */
export function formatFigure(value: number, unit: string): string {
  return `${digits(value, unit)}${unitAfter(unit)}`;
}

/**
 * A range of values with the unit once.
 *
 * @example formatRange(-6, 1.84, 'ms') // '−6.0 to 1.8 ms'
 */
export function formatRange(low: number, high: number, unit: string): string {
  return `${digits(low, unit)} to ${digits(high, unit)}${unitAfter(unit)}`;
}

function digits(value: number, unit: string): string {
  if (unit === 'probability') return signed(value * 100, 1);
  return signed(value, unit === 'ms' || unit === '%' || unit === 'dB' || unit === 'BPM' ? 1 : 2);
}

function unitAfter(unit: string): string {
  if (unit === 'probability') return '\u00a0in\u00a0100';
  return unit === '' ? '' : `\u00a0${unit}`;
}

function signed(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(digits) !== 0 ? `\u2212${digits}` : digits;
}

const hands = { R: 'right hand', L: 'left hand' } as const;
const places = { before: 'before an accent', on: 'on an accent', after: 'after an accent' } as const;

/**
 * The part of the take that a measure speaks of, in words.
 *
 * @example scopeWords({ hand: 'L', line: 1 }) // 'line 2, left hand'
 */
export function scopeWords({ line, repeat, hand, partial, place }: Scope): string {
  const words = [
    line === undefined ? '' : `line ${line + 1}`,
    repeat === undefined ? '' : `repeat ${repeat + 1}`,
    hand === undefined ? '' : hands[hand],
    partial === undefined ? '' : `partial ${partial}`,
    place === undefined ? '' : places[place],
  ].filter((word) => word !== '');
  return words.length === 0 ? 'whole take' : words.join(', ');
}

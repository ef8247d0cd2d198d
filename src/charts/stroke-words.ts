import { rounded } from '../core/result/figures.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { clockTime } from './clock-time.ts';
import { placeName } from './place-name.ts';

/** Milliseconds from the even place in words: '4.2 ms late', '3.0 ms early', 'even'. */
export function deviationWords(deviationMs: number): string {
  const size = Math.abs(deviationMs).toFixed(1);
  if (size === '0.0') return 'even';
  return `${size} ms ${deviationMs > 0 ? 'late' : 'early'}`;
}

/** Decibels with a true minus sign: '−12.3 dB'. */
export function decibels(levelDb: number): string {
  return `${rounded(levelDb)} dB`;
}

/** All that is known of one stroke, a line a thing, for the box that opens over it. */
export function strokeWords(result: TakeResult, stroke: number): string[] {
  const { strokes, slots } = result;
  const slot = strokes.slot[stroke] ?? null;
  const hand = result.hands === 'not-told' ? null : strokes.hand[stroke];
  const deviation = strokes.deviationMs[stroke] ?? null;
  const kind = slot === null ? 'stroke' : slots.accent[slot] ? 'accent' : 'tap';
  const handWords = hand === 'R' ? ', right hand' : hand === 'L' ? ', left hand' : '';
  return [
    ...(slot === null ? [] : [placeName(result, slot)]),
    `${kind}${handWords}, at ${clockTime(strokes.time[stroke]!, 1)}`,
    ...(deviation === null ? [] : [deviationWords(deviation)]),
    decibels(strokes.levelDb[stroke]!),
  ];
}

import type { TakeResult } from '../../src/core/result/take-result.ts';
import { smallTake } from './small-take.ts';

/**
 * A take for every picture, each of its figures known by construction: 24 triplets by a small take's rules, but the
 * accent goes from partial to partial and hands play in pairs of strokes. A stroke is late by 2 ms in the left hand; a
 * tap right after an accent is 3 dB above the others (−24 dB), an accent at −12 dB.
 */
export function walkingTake(changes: Partial<TakeResult> = {}): TakeResult {
  const small = smallTake(24);
  const count = small.slots.line.length;
  const index = Array.from({ length: count }, (_, i) => i);
  const accent = index.map((i) => i % 3 === Math.floor(i / 12) % 3);
  const hand = index.map((i): 'R' | 'L' => (i % 4 < 2 ? 'R' : 'L'));
  const deviationMs = hand.map((h) => (h === 'L' ? 2 : 0));
  const levelDb = index.map((i) => (accent[i] ? -12 : accent[i - 1] ? -21 : -24));
  const part = (place: 'before' | 'on' | 'after', value: number) => ({
    id: 'accent-bend',
    unit: 'ms',
    scope: { place },
    outcome: {
      state: 'measured' as const,
      value,
      low: value - 2,
      high: value + 2,
      strokes: 24,
      pointsAt: [],
    },
  });
  return {
    ...small,
    slots: { ...small.slots, accent, hand },
    strokes: {
      ...small.strokes,
      hand,
      deviationMs,
      levelDb,
      time: index.map((i) => 1 + 0.2 * i + deviationMs[i]! / 1000),
    },
    measures: [part('before', -3), part('on', 1), part('after', 4)],
    ...changes,
  };
}

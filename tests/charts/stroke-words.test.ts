import { describe, expect, it } from 'vitest';
import { decibels, deviationWords, strokeWords } from '../../src/charts/stroke-words.ts';
import { smallTake } from './small-take.ts';

describe('strokeWords', () => {
  it('tells place, kind, hand, time, timing and level', () => {
    expect(strokeWords(smallTake(2), 1)).toEqual([
      'bar 1, beat 1, partial 2',
      'tap, left hand, at 0:01.2',
      '6.0 ms early',
      '−24.0 dB',
    ]);
  });

  it('names no hand where hands cannot be told', () => {
    expect(strokeWords(smallTake(2, { hands: 'not-told' }), 3)[1]).toBe('accent, at 0:01.6');
  });
});

describe('deviationWords and decibels', () => {
  it('say even for what rounds to nothing, and have a true minus', () => {
    expect(deviationWords(-0.04)).toBe('even');
    expect(deviationWords(0.06)).toBe('0.1 ms late');
    expect(decibels(-3)).toBe('\u22123.0 dB');
    expect(decibels(-0.04)).toBe('0.0 dB');
  });
});

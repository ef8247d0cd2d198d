import { describe, expect, it } from 'vitest';
import { placeName } from '../../src/charts/place-name.ts';
import { exampleResult } from '../support/example-result.ts';
import { smallTake } from './small-take.ts';

describe('placeName', () => {
  it('counts bars, beats and partials from one, beats inside their bar', () => {
    const result = smallTake(6);
    expect(placeName(result, 0)).toBe('bar 1, beat 1, partial 1');
    expect(placeName(result, 11)).toBe('bar 1, beat 4, partial 3');
    expect(placeName(result, 12)).toBe('bar 2, beat 1, partial 1');
    expect(placeName(result, 16)).toBe('bar 2, beat 2, partial 2');
  });

  it('names line and repeat where there are several', () => {
    expect(placeName(exampleResult(), 0)).toBe('line 1, repeat 1 of 3, bar 1, beat 1, partial 1');
    expect(placeName(exampleResult(), 71)).toBe('line 2, repeat 3 of 3, bar 1, beat 4, partial 3');
  });

  it("follows bar lines that come earlier than the sheet's bar is long", () => {
    const result = smallTake(6);
    const bar = result.slots.beat.map((beat) => Math.floor(beat / 3));
    expect(placeName({ ...result, slots: { ...result.slots, bar } }, 15)).toBe('bar 2, beat 3, partial 1');
    expect(placeName({ ...result, slots: { ...result.slots, bar } }, 9)).toBe('bar 2, beat 1, partial 1');
  });
});

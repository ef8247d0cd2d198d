import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestSilence, nextSilence } from '../../../src/core/click-track/next-silence.ts';

describe('nextSilence', () => {
  it('grows while the player holds, shrinks where the beat was lost, stays in between and where nothing is known', () => {
    const beatSeconds = 0.5;
    expect(nextSilence(1, { offSeconds: 0.02, beatSeconds })).toBe(2);
    expect(nextSilence(2, { offSeconds: -0.02, beatSeconds })).toBe(4);
    expect(nextSilence(4, { offSeconds: 0.05, beatSeconds })).toBe(4);
    expect(nextSilence(4, { offSeconds: -0.1, beatSeconds })).toBe(2);
    expect(nextSilence(4, null)).toBe(4);
  });

  it('stays between one bar and the longest, and never lengthens for being further off', () => {
    const off = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: longestSilence }), off, off, (bars, a, b) => {
        const next = (offSeconds: number) => nextSilence(bars, { offSeconds, beatSeconds: 0.5 });
        expect(next(Math.max(a, b))).toBeLessThanOrEqual(next(Math.min(a, b)));
        expect(next(a)).toBeGreaterThanOrEqual(1);
        expect(next(a)).toBeLessThanOrEqual(longestSilence);
      }),
    );
  });
});

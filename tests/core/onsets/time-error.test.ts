import { describe, expect, it } from 'vitest';
import { timeError } from '../../../src/core/onsets/time-error.ts';

const onset = (curvatureSe: number, lateDb = 0) => ({ time: 1, curvatureSe, depthDb: 40, lateDb });

describe('timeError', () => {
  it('is never nothing: no stroke is known better than some microseconds', () => {
    expect(timeError(onset(0))).toBeGreaterThan(2e-6);
    expect(timeError(onset(0))).toBeLessThan(5e-5);
  });

  it('grows with the width of the likelihood, and is about that width where it is wide', () => {
    const widths = [1e-6, 1e-5, 1e-4, 1e-3];
    const errors = widths.map((width) => timeError(onset(width)));
    for (let i = 1; i < errors.length; i++) expect(errors[i]).toBeGreaterThan(errors[i - 1]!);
    expect(errors[3]! / 1e-3).toBeGreaterThan(0.5);
    expect(errors[3]! / 1e-3).toBeLessThan(2);
  });

  it('is larger where the attack starts far under its peak', () => {
    expect(timeError(onset(1e-5, 30))).toBeGreaterThan(timeError(onset(1e-5, 3)));
  });
});

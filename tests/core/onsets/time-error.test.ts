import { describe, expect, it } from 'vitest';
import { timeError } from '../../../src/core/onsets/time-error.ts';

const errorOf = (curvatureSe: number, lateDb = 0, depthDb = 48, rate = 48_000) =>
  timeError({ time: 1, curvatureSe, depthDb, lateDb }, rate);

describe('timeError', () => {
  it('is never nothing: no stroke is known better than some microseconds', () => {
    expect(errorOf(0)).toBeGreaterThan(2e-6);
    expect(errorOf(0)).toBeLessThan(5e-5);
  });

  it('grows with the width of the likelihood, and is of its size where it is wide', () => {
    const widths = [1e-6, 1e-5, 1e-4, 1e-3];
    const errors = widths.map((width) => errorOf(width));
    for (let i = 1; i < errors.length; i++) expect(errors[i]).toBeGreaterThan(errors[i - 1]!);
    expect(errors[3]! / 1e-3).toBeGreaterThan(0.3);
    expect(errors[3]! / 1e-3).toBeLessThan(2);
  });

  it('is larger where the attack starts far under its peak, but not without end', () => {
    expect(errorOf(1e-5, 30)).toBeGreaterThan(errorOf(1e-5, 3));
    expect(errorOf(1e-5, 60)).toBe(errorOf(1e-5, 30));
  });

  it('is larger where the floor hides the beginning of an attack that swells', () => {
    expect(errorOf(1e-5, 5, 30)).toBeGreaterThan(1.5 * errorOf(1e-5, 5, 48));
    expect(errorOf(1e-5, 0, 30)).toBe(errorOf(1e-5, 0, 48));
  });
});

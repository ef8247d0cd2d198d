import { describe, expect, it } from 'vitest';
import { spreadOutcome } from '../../../src/core/measures/spread-outcome.ts';

const figure = { variance: 9, degrees: 10, perUnit: 1, unit: 'dB', strokes: 11, pointsAt: [] };

describe('spreadOutcome', () => {
  // 10 · 9 / χ²: 20.483177 and 3.246973 are the 97.5 % and 2.5 % points with 10 degrees (printed tables).
  it('is a chi-square interval', () => {
    expect(spreadOutcome({ ...figure, errorVariance: 0 })).toMatchObject({
      value: 3,
      low: expect.closeTo(Math.sqrt(90 / 20.483177), 6),
      high: expect.closeTo(Math.sqrt(90 / 3.246973), 5),
    });
  });
  it('takes the error of finding out of all three', () => {
    expect(spreadOutcome({ ...figure, errorVariance: 2 })).toMatchObject({
      value: expect.closeTo(Math.sqrt(7), 10),
      low: expect.closeTo(Math.sqrt(90 / 20.483177 - 2), 6),
    });
  });
  it('refuses above a quarter', () => {
    expect(spreadOutcome({ ...figure, errorVariance: 2.3 })).toEqual({
      state: 'not-measurable',
      reason: {
        code: 'found-too-coarsely',
        facts: { spread: 3, error: expect.closeTo(Math.sqrt(2.3), 10), unit: 'dB' },
      },
    });
  });
});

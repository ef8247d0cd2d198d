import { describe, expect, it } from 'vitest';
import { sameLoudness, tapsLoweredDb } from '../../../src/report/listening/same-loudness.ts';

describe('sameLoudness', () => {
  it('is the root of the ratio of the powers', () => {
    expect(sameLoudness({ tap: [false, true], levelDb: [-10, -10] })).toBeCloseTo(
      Math.sqrt((1 + 10 ** (-tapsLoweredDb / 10)) / 2),
      12,
    );
  });

  it('changes nothing without taps, and lowers all by the same where there are only taps', () => {
    expect(sameLoudness({ tap: [false], levelDb: [-3] })).toBe(1);
    expect(sameLoudness({ tap: [true, true], levelDb: [-3, -9] })).toBeCloseTo(
      10 ** (-tapsLoweredDb / 20),
      12,
    );
    expect(sameLoudness({ tap: [], levelDb: [] })).toBe(1);
  });
});

import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../../src/core/stats/wilson-interval.ts';

const z = 1.9599639845400545;

describe('wilsonInterval', () => {
  // scipy 1.17.1, binomtest(4, 20).proportion_ci(method='wilson') and binomtest(0, 30)
  it('agrees with scipy', () => {
    const some = wilsonInterval(0.2, 20, z);
    expect(some.low).toBeCloseTo(0.08065766257979806, 12);
    expect(some.high).toBeCloseTo(0.4160174322518936, 12);
    const none = wilsonInterval(0, 30, z);
    expect(none.low).toBe(0);
    expect(none.high).toBeCloseTo(0.11351339317396875, 12);
  });
  it('refuses a share of nothing', () => expect(() => wilsonInterval(0, 0, z)).toThrow(RangeError));
});

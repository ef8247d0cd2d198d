import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../src/core/stats/normal-quantile.ts';

describe('normalQuantile', () => {
  it('is the example', () => expect(normalQuantile(0.975)).toBeCloseTo(1.9599639845400545, 12));
  it('refuses certainty, and what is no probability', () => {
    for (const p of [0, 1, -0.1, 1.1, Number.NaN])
      expect(() => normalQuantile(p), `${p}`).toThrow(RangeError);
  });
  // scipy 1.17.1, stats.norm.ppf
  it.each([
    [1e-12, -7.034483825301131],
    [0.001, -3.090232306167813],
    [0.3, -0.5244005127080409],
  ])('agrees with scipy at %f', (p, want) => expect(normalQuantile(p)).toBeCloseTo(want, 10));
});

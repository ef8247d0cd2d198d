import { describe, expect, it } from 'vitest';
import { acceleration, bcaInterval } from '../../../src/core/stats/bca-interval.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { uniformFrom } from '../measures/simulated-performance.ts';

const values = [10, 12, 12.5, 12.5, 13.9, 15, 21, 22, 23, 34, 50, 81, 89, 121, 134, 213];

describe('acceleration', () => {
  it('is the example', () => expect(acceleration([1, 2, 3], mean)).toBeCloseTo(0, 14));

  // Law school of Efron & Tibshirani 1993, the data quoted from memory: correlation 0.776374, jackknife a −0.0756716.
  it('is that of the law schools', () => {
    const lsat = [576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594];
    const gpa = [3.39, 3.3, 2.81, 3.03, 3.44, 3.07, 3.0, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96];
    const correlation = (pairs: readonly (readonly [number, number])[]) => {
      const [mx, my] = [mean(pairs.map(([x]) => x)), mean(pairs.map(([, y]) => y))];
      const sum = (of: (x: number, y: number) => number) =>
        pairs.reduce((total, [x, y]) => total + of(x - mx, y - my), 0);
      return sum((x, y) => x * y) / Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y));
    };
    const pairs = lsat.map((x, i) => [x, gpa[i]!] as const);
    expect(correlation(pairs)).toBeCloseTo(0.776374, 6);
    expect(acceleration(pairs, correlation)).toBeCloseTo(-0.0756716, 7);
  });
});

describe('bcaInterval', () => {
  it('is the example', () => {
    const even = Array.from({ length: 200 }, (_, i) => i - 99.5);
    const { low, high } = bcaInterval(0, even, 0);
    expect(low).toBeCloseTo(quantile(even, 0.025), 9);
    expect(high).toBeCloseTo(quantile(even, 0.975), 9);
  });

  // R's boot with a million resamples, as scipy quotes it in its own tests: BCa 32.31 to 91.43 where the plain
  // quantiles are 28.86 to 84.21. 20,000 resamples know these bounds to about 0.3.
  it("is near R's for the mean of a skewed sample", () => {
    const uniform = uniformFrom(12);
    const resampled = Array.from({ length: 20_000 }, () =>
      mean(values.map(() => values[Math.floor(uniform() * values.length)]!)),
    );
    const { low, high } = bcaInterval(mean(values), resampled, acceleration(values, mean));
    expect(Math.abs(low - 32.31)).toBeLessThan(0.9);
    expect(Math.abs(high - 91.43)).toBeLessThan(1.2);
    expect(Math.abs(quantile(resampled, 0.025) - 28.86)).toBeLessThan(0.9);
    expect(Math.abs(quantile(resampled, 0.975) - 84.21)).toBeLessThan(1.2);
  });

  it('needs resamples on both sides', () => expect(() => bcaInterval(0, [1, 2], 0)).toThrow(RangeError));
});

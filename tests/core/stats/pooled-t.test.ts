import { describe, expect, it } from 'vitest';
import { fTail } from '../../../src/core/stats/f-tail.ts';
import { summaryOf } from '../../../src/core/stats/mean-difference.ts';
import { pooledT } from '../../../src/core/stats/pooled-t.ts';

describe('pooledT', () => {
  it('is the example', () => {
    const { t, degrees } = pooledT(summaryOf([1, 2, 3]), summaryOf([2, 4, 6]));
    expect(t).toBeCloseTo(-2 / Math.sqrt(5 / 3), 13);
    expect(degrees).toBe(4);
  });

  // NIST/SEMATECH e-Handbook, 1.3.5.3, AUTO83B: miles per gallon of US and Japanese cars; quoted from memory.
  it('agrees with the worked example of the NIST handbook', () => {
    const { t, degrees, se } = pooledT(
      { n: 249, mean: 20.14458, sd: 6.4147 },
      { n: 79, mean: 30.48101, sd: 6.10771 },
    );
    expect(t).toBeCloseTo(-12.62059, 4);
    expect(degrees).toBe(326);
    expect(se / Math.sqrt(1 / 249 + 1 / 79)).toBeCloseTo(6.3426, 4);
  });

  it('is the analysis of variance of two groups: t² is F, with the same p', () => {
    const { t, p, degrees } = pooledT(summaryOf([3, 5, 4, 6, 2]), summaryOf([7, 4, 8, 6]));
    expect(p).toBeCloseTo(fTail(t * t, 1, degrees), 13);
  });

  it('holds a single value against a sample', () => {
    const { t, degrees } = pooledT({ n: 1, mean: 7, sd: 0 }, summaryOf([3, 4, 5]));
    expect(degrees).toBe(2);
    expect(t).toBeCloseTo(3 / Math.sqrt(4 / 3), 13);
    // A single value's scatter is no number, and either sample may be the single one.
    expect(pooledT(summaryOf([3, 4, 5]), { n: 1, mean: 7, sd: Number.NaN }).t).toBeCloseTo(-t, 13);
    expect(pooledT({ n: 1, mean: 7, sd: 0 }, summaryOf([3, 5])).degrees).toBe(1);
  });

  it('needs some scatter', () => {
    const single = { n: 1, mean: 7, sd: 0 };
    expect(() => pooledT(single, single)).toThrow(RangeError);
    const [none, three] = [{ n: 0, mean: 0, sd: 0 }, summaryOf([1, 2, 3])];
    expect(() => pooledT(none, three)).toThrow('means without scatter');
    expect(() => pooledT(three, none)).toThrow('means without scatter');
  });
});

import { describe, expect, it } from 'vitest';
import { summaryOf } from '../../../src/core/stats/mean-difference.ts';
import { welchT } from '../../../src/core/stats/welch-t.ts';

describe('welchT', () => {
  it('is the example', () => {
    const { t, degrees } = welchT(summaryOf([1, 2, 3]), summaryOf([2, 4, 6]));
    expect(t).toBeCloseTo(-2 / Math.sqrt(1 / 3 + 4 / 3), 13);
    expect(degrees).toBeCloseTo(25 / 9 / ((1 / 9 + 16 / 9) / 2), 13);
  });

  it('agrees with R, as scipy quotes it in its own tests of ttest_ind', () => {
    const other = summaryOf([1.1, 2.9, 4.2]);
    const three = welchT(summaryOf([1, 2, 3]), other);
    expect(three.t).toBeCloseTo(-0.686495127355726, 13);
    expect(three.degrees).toBeCloseTo(3.4104431643464, 12);
    expect(three.p).toBeCloseTo(0.536194907531267, 13);
    const four = welchT(summaryOf([1, 2, 3, 4]), other);
    expect(four.t).toBeCloseTo(-0.210866331595072, 13);
    expect(four.p).toBeCloseTo(0.843541391316083, 13);
  });

  // NIST/SEMATECH e-Handbook, 1.3.5.3, AUTO83B: miles per gallon of US and Japanese cars; quoted from memory.
  it('agrees with the worked example of the NIST handbook', () => {
    const us = { n: 249, mean: 20.14458, sd: 6.4147 };
    const japan = { n: 79, mean: 30.48101, sd: 6.10771 };
    const { t, degrees } = welchT(us, japan);
    expect(t).toBeCloseTo(-12.94627, 4);
    expect(degrees).toBeCloseTo(136.875, 2);
  });

  it('turns its sign with the order', () => {
    const [a, b] = [summaryOf([3, 1, 2]), summaryOf([8, 5, 6, 9])];
    expect(welchT(a, b).t).toBe(-welchT(b, a).t);
    expect(welchT(a, b).p).toBe(welchT(b, a).p);
  });

  it('finds no difference between equal values, and a sure one between two constants', () => {
    const constant = (mean: number) => ({ n: 3, mean, sd: 0 });
    expect(welchT(constant(2), constant(2)).p).toBe(1);
    expect(welchT(constant(2), constant(3)).p).toBe(0);
    expect(welchT(constant(2), { ...constant(3), n: 5 }).degrees).toBe(3 + 5 - 2);
  });

  it('needs two values a side', () => {
    const [single, two] = [{ n: 1, mean: 3, sd: 1 }, summaryOf([1, 2])];
    expect(() => welchT(single, two)).toThrow('a mean without scatter');
    expect(() => welchT(two, single)).toThrow('a mean without scatter');
    expect(welchT(two, two).degrees).toBe(2);
  });
});

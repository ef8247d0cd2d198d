import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { autocorrelation } from '../../../src/core/stats/autocorrelation.ts';
import { leastSquares } from '../../../src/core/stats/least-squares.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { standardDeviation } from '../../../src/core/stats/standard-deviation.ts';
import { describeOutside } from '../../outside.ts';

/** Text and numbers of a NIST Statistical Reference Dataset (US public domain). */
function readSet(folder: string, name: string) {
  const text = readFileSync(join(folder, 'nist', name), 'utf8');
  const data = text
    .slice(Math.max(0, text.lastIndexOf('Data:')))
    .split('\n')
    .slice(1)
    .map((row) => row.trim())
    .filter((row) => row !== '')
    .map((row) => row.split(/\s+/).map(Number))
    .filter((row) => row.every(Number.isFinite));
  return { text, data };
}

/** Certified count, mean, standard deviation (n - 1) and lag-one correlation; itl.nist.gov/div898/strd/univ. */
const univariate: readonly (readonly [string, number, number, number, number])[] = [
  ['Michelso', 100, 299.8524, 0.0790105478190518, 0.535199668621283],
  ['Mavro', 50, 2.001856, 0.000429123454003053, 0.937989183438248],
  ['Lew', 200, -177.435, 277.332168044316, -0.307304800605679],
  ['Lottery', 218, 518.95871559633, 291.699727470969, -0.120948622967393],
  ['PiDigits', 5000, 4.5348, 2.86733906028871, -0.00355099287237972],
  ['NumAcc1', 3, 10000002, 1, -0.5],
  ['NumAcc2', 1001, 1.2, 0.1, -0.999],
  ['NumAcc3', 1001, 1000000.2, 0.1, -0.999],
  ['NumAcc4', 1001, 10000000.2, 0.1, -0.999],
];

describeOutside(
  'NIST StRD, univariate',
  univariate.map(([name]) => `nist/${name}.txt`),
  (folder) => {
    it.each(univariate)('%s as certified', (name, n, certifiedMean, certifiedSd, certifiedLagOne) => {
      const values = readSet(folder, `${name}.txt`).data.map((row) => row[0]!);
      expect(values).toHaveLength(n);
      // NumAcc3 and NumAcc4 lose digits when their decimals are stored as binary fractions.
      const digits = name === 'NumAcc4' ? 7 : name === 'NumAcc3' ? 8 : 12;
      const close = (got: number, want: number) =>
        expect(Math.abs(got - want) / Math.abs(want), `${got} against ${want}`).toBeLessThan(10 ** -digits);
      close(mean(values), certifiedMean);
      close(standardDeviation(values), certifiedSd);
      close(autocorrelation(values, 1), certifiedLagOne);
    });
  },
);

describeOutside('NIST StRD, straight line', ['nist/Norris.dat'], (folder) => {
  it('Norris: coefficients, their standard errors and the residual deviation as certified', () => {
    const { text, data } = readSet(folder, 'Norris.dat');
    const y = Float64Array.from(data, (row) => row[0]!);
    const x = Float64Array.from(data, (row) => row[1]!);
    const fit = leastSquares({ columns: [new Float64Array(y.length).fill(1), x] }, y);
    const rows = [...text.matchAll(/^\s+B[01]\s+(\S+)\s+(\S+)\s*$/gm)].map((m) => [
      Number(m[1]),
      Number(m[2]),
    ]);
    const rss = fit.residuals.reduce((sum, r) => sum + r * r, 0);
    const s = Math.sqrt(rss / (y.length - 2));
    expect(y).toHaveLength(36);
    expect(s).toBeCloseTo(0.884796396144373, 11);
    rows.forEach(([value, error], k) => {
      expect(fit.coefficients[k]! / value!).toBeCloseTo(1, 11);
      expect((s * Math.sqrt(fit.inverse[k]![k]!)) / error!).toBeCloseTo(1, 11);
    });
    expect(rows).toHaveLength(2);
  });
});

describe('NIST StRD, quoted', () => {
  it('NumAcc1 by its definition', () => {
    const values = [10000001, 10000003, 10000002];
    expect(mean(values)).toBe(10000002);
    expect(standardDeviation(values)).toBe(1);
    expect(autocorrelation(values, 1)).toBe(-0.5);
  });
  it('NumAcc2 by its definition', () => {
    const values = [1.2, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? 1.1 : 1.3))];
    expect(mean(values)).toBeCloseTo(1.2, 14);
    expect(standardDeviation(values)).toBeCloseTo(0.1, 13);
    expect(autocorrelation(values, 1)).toBeCloseTo(-0.999, 12);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { autocorrelation } from '../../../src/core/stats/autocorrelation.ts';
import { bartlettVariance } from '../../../src/core/stats/bartlett-variance.ts';
import { chiSquareQuantile } from '../../../src/core/stats/chi-square-quantile.ts';
import { fTail } from '../../../src/core/stats/f-tail.ts';
import { holm } from '../../../src/core/stats/holm.ts';
import { incompleteBeta } from '../../../src/core/stats/incomplete-beta.ts';
import { leastSquares } from '../../../src/core/stats/least-squares.ts';
import { mad } from '../../../src/core/stats/mad.ts';
import { summaryOf } from '../../../src/core/stats/mean-difference.ts';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';
import { normalQuantile } from '../../../src/core/stats/normal-quantile.ts';
import { pooledT } from '../../../src/core/stats/pooled-t.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { separationProbability } from '../../../src/core/stats/separation-probability.ts';
import { studentTCdf } from '../../../src/core/stats/student-t-cdf.ts';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';
import { welchT } from '../../../src/core/stats/welch-t.ts';
import { wilsonInterval } from '../../../src/core/stats/wilson-interval.ts';

// Worked out by R, whose version the file tells, with fixtures/vectors/r/make.R.
const file = join(import.meta.dirname, '../../../fixtures/vectors/r/check-values.json');
const values = JSON.parse(readFileSync(file, 'utf8')) as Readonly<Record<string, readonly number[][]>>;

/** Rows of a table, of which there must be so many. */
function table(name: string, count: number): readonly number[][] {
  const rows = values[name]!;
  expect(rows, name).toHaveLength(count);
  return rows;
}
const column = (name: string, count: number, at = 0) => table(name, count).map((row) => row[at]!);

/** Agrees to `digits` significant digits; values near nought to as many decimals. */
function expectR(got: number, want: number, digits = 11) {
  const off = Math.abs(got - want) / Math.max(Math.abs(want), 1e-3);
  expect(off, `${got} against ${want}`).toBeLessThan(10 ** -digits);
}

describe('distributions as R has them', () => {
  it("Student's t", () => {
    for (const [degrees, p, at, below] of table('t', 49)) {
      expectR(studentTQuantile(p!, degrees!), at!, 9);
      expectR(studentTCdf(at! - 1, degrees!), below!, 10);
    }
  });

  it('chi-square', () => {
    for (const [degrees, p, at] of table('chi-square', 35)) expectR(chiSquareQuantile(p!, degrees!), at!, 9);
  });

  it('normal, far tails with relative precision', () => {
    for (const [z, below] of table('normal', 9)) {
      expect(Math.abs(normalCdf(z!) / below! - 1), `at ${z}`).toBeLessThan(1e-11);
    }
    for (const [p, z] of table('normal-quantile', 8)) expectR(normalQuantile(p!), z!);
  });

  it('F', () => {
    for (const [f, between, within, tail] of table('f', 36)) expectR(fTail(f!, between!, within!), tail!, 10);
  });

  it('binomial, by the incomplete beta function', () => {
    for (const [hits, trials, share, chance] of table('binomial-tail', 4)) {
      expectR(incompleteBeta(hits!, trials! - hits! + 1, share!), chance!);
    }
  });
});

describe('methods as R has them', () => {
  it("Wilson's interval", () => {
    for (const [hits, trials, low, high] of table('wilson', 7)) {
      const found = wilsonInterval(hits! / trials!, trials!, normalQuantile(0.975));
      expectR(found.low, low!);
      expectR(found.high, high!);
    }
  });

  it("Holm's rule, ties included", () => {
    const p = column('holm', 7);
    const corrected = column('holm', 7, 1);
    holm(p).forEach((got, i) => {
      expectR(got, corrected[i]!);
    });
  });

  it('least squares with standard errors', () => {
    const rows = table('least-squares-data', 40);
    const y = Float64Array.from(rows, (row) => row[0]!);
    const columns = [y.map(() => 1), ...[1, 2].map((at) => Float64Array.from(rows, (row) => row[at]!))];
    const fit = leastSquares({ columns }, y);
    const s2 = fit.residuals.reduce((sum, r) => sum + r * r, 0) / (rows.length - 3);
    table('least-squares', 3).forEach(([estimate, error], k) => {
      expectR(fit.coefficients[k]!, estimate!);
      expectR(Math.sqrt(s2 * fit.inverse[k]![k]!), error!);
    });
  });

  it('variance of a sum with Bartlett weights', () => {
    const series = column('bartlett-series', 40);
    for (const [lag, want] of table('bartlett', 7)) expectR(bartlettVariance(series, lag!), want!);
  });

  it('Welch and pooled t', () => {
    const first = summaryOf(column('two-samples-first', 5));
    const second = summaryOf(column('two-samples-second', 7));
    const rows = table('welch-and-pooled', 2);
    [welchT(first, second), pooledT(first, second)].forEach(({ t, degrees, p }, i) => {
      expectR(t, rows[i]![0]!);
      expectR(degrees, rows[i]![1]!);
      expectR(p, rows[i]![2]!);
    });
  });

  it('pairs of two samples, quantiles, MAD and autocorrelation', () => {
    const first = column('two-samples-first', 5);
    const second = column('two-samples-second', 7);
    expectR(separationProbability(second, first), column('separation', 1)[0]!);
    expectR(mad(second), column('mad', 1)[0]!);
    for (const [p, want] of table('quantile-7', 6)) expectR(quantile(second, p!), want!);
    const y = column('least-squares-data', 40);
    for (const [lag, want] of table('autocorrelation', 5)) expectR(autocorrelation(y, lag!), want!);
  });
});

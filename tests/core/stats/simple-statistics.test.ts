import fc from 'fast-check';
import * as independent from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { autocorrelation } from '../../../src/core/stats/autocorrelation.ts';
import { leastSquares } from '../../../src/core/stats/least-squares.ts';
import { logGamma } from '../../../src/core/stats/log-gamma.ts';
import { mad } from '../../../src/core/stats/mad.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { summaryOf } from '../../../src/core/stats/mean-difference.ts';
import { median } from '../../../src/core/stats/median.ts';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';
import { normalQuantile } from '../../../src/core/stats/normal-quantile.ts';
import { pooledT } from '../../../src/core/stats/pooled-t.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { separationProbability } from '../../../src/core/stats/separation-probability.ts';
import { standardDeviation } from '../../../src/core/stats/standard-deviation.ts';

/** Deviations as a take has them: tenths of a millisecond up to half a second. */
const deviation = fc.integer({ min: -5000, max: 5000 }).map((tenths) => tenths / 10);
const sample = (least: number) => fc.array(deviation, { minLength: least, maxLength: 60 });
const spreadOut = sample(3).filter((values) => Math.max(...values) - Math.min(...values) > 10);
const varied = sample(3).filter((values) => new Set(values).size > 1);

function expectNear(got: number, want: number, scale = 1) {
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThan(1e-9 * Math.max(scale, Math.abs(want)));
}
const check = (property: fc.IRawProperty<unknown>) => fc.assert(property, { seed: 1, numRuns: 200 });

// simple-statistics 7.12.1 (ISC), written apart from this code.
describe('agrees with simple-statistics', () => {
  it('on mean, middle and spread', () => {
    check(
      fc.property(sample(2), (values) => {
        expectNear(mean(values), independent.mean(values));
        expectNear(median(values), independent.median(values));
        expectNear(mad(values), independent.medianAbsoluteDeviation(values));
        expectNear(standardDeviation(values), independent.sampleStandardDeviation(values));
      }),
    );
  });

  it('on quantiles, which it too takes by type 7', () => {
    check(
      fc.property(sample(1), fc.double({ min: 0, max: 1, noNaN: true }), (values, p) =>
        expectNear(quantile(values, p), independent.quantile(values, p)),
      ),
    );
  });

  it('on a straight line', () => {
    check(
      fc.property(spreadOut, fc.infiniteStream(deviation), (x, stream) => {
        const y = Float64Array.from(x, () => stream.next().value!);
        const fit = leastSquares({ columns: [new Float64Array(x.length).fill(1), Float64Array.from(x)] }, y);
        const { m, b } = independent.linearRegression(x.map((at, i) => [at, y[i]!]));
        expectNear(fit.coefficients[1]!, m);
        expectNear(fit.coefficients[0]!, b, 1000);
      }),
    );
  });

  it('on the correlation of neighbours, put together from its covariances', () => {
    check(
      fc.property(varied, (values) => {
        const n = values.length;
        const centre = independent.mean(values);
        const [early, late] = [values.slice(0, -1), values.slice(1)];
        const products =
          independent.sampleCovariance(early, late) * (n - 2) +
          (n - 1) * (independent.mean(early) - centre) * (independent.mean(late) - centre);
        expectNear(autocorrelation(values, 1), products / independent.sumNthPowerDeviations(values, 2));
      }),
    );
  });

  it("on Student's t of two samples", () => {
    check(
      fc.property(varied, varied, (a, b) =>
        expectNear(pooledT(summaryOf(a), summaryOf(b)).t, independent.tTestTwoSample(a, b)!),
      ),
    );
  });

  it('on pairs of which one is larger, by its rank sum without ties', () => {
    const distinct = fc.uniqueArray(fc.integer({ min: -999, max: 999 }), { minLength: 2, maxLength: 40 });
    check(
      fc.property(distinct, fc.double({ min: 0, max: 1, noNaN: true }), (all, share) => {
        const m = Math.min(all.length - 1, Math.max(1, Math.round(share * all.length)));
        const [upper, lower] = [all.slice(0, m), all.slice(m)];
        const wins = independent.wilcoxonRankSum(upper, lower) - (m * (m + 1)) / 2;
        expectNear(separationProbability(upper, lower), wins / (m * lower.length));
      }),
    );
  });

  it('on the logarithm of the gamma function', () => {
    check(
      fc.property(fc.double({ min: 0.01, max: 500, noNaN: true }), (x) =>
        expectNear(logGamma(x), independent.gammaln(x)),
      ),
    );
  });

  // Its error function is good to 1.2e-7, its quantiles by Winitzki's formula to some thousandths of their size.
  it('on the normal distribution, as far as its approximations go', () => {
    check(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        const want = (1 + independent.errorFunction(z / Math.SQRT2)) / 2;
        expect(Math.abs(normalCdf(z) - want)).toBeLessThan(1e-7);
      }),
    );
    check(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (p) => {
        const want = independent.probit(p);
        expect(Math.abs(normalQuantile(p) - want)).toBeLessThan(1e-9 + 5e-3 * Math.abs(want));
      }),
    );
  });
});

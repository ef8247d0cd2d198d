import { describe, expect, it } from 'vitest';
import { correctingModels, fitTempo, freeModels } from '../../../src/core/measures/tempo-fit.ts';
import { leastSquares } from '../../../src/core/stats/least-squares.ts';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';
import { normalFrom, uniformFrom } from './simulated-performance.ts';

const n = 60;
const t = Float64Array.from({ length: n }, (_, i) => i / 30 - 1);
const place = Float64Array.from({ length: n }, (_, i) => i);
const normal = normalFrom(uniformFrom(4));
const y = Float64Array.from(t, (x) => 0.3 * x + 0.01 * normal());

describe('fitTempo', () => {
  it('is least squares where nothing lingers', () => {
    const ones = new Float64Array(n).fill(1);
    const plain = leastSquares({ columns: [ones, t] }, y);
    const variance = plain.residuals.reduce((s, r) => s + r * r, 0) / (n - 2);
    const half = studentTQuantile(0.975, 30) * Math.sqrt(variance * plain.inverse[1]![1]!);
    const fit = fitTempo(
      { y, columns: [t], stretch: new Int32Array(n), place },
      [{ memory: 0, ratio: 1 }],
      30,
    )!;
    expect(fit.mean).toBeCloseTo(plain.coefficients[1]!, 10);
    expect(fit.quantile(0.975)).toBeCloseTo(plain.coefficients[1]! + half, 8);
    expect(fit.quantile(0.025)).toBeCloseTo(plain.coefficients[1]! - half, 8);
  });

  it('of a random walk with little noise is the mean of its steps', () => {
    let at = 0;
    const walk = Float64Array.from({ length: n }, (_, i) => {
      if (i > 0) at += 0.01 + 0.002 * normal();
      return at;
    });
    const fit = fitTempo(
      { y: walk, columns: [place], stretch: new Int32Array(n), place },
      [{ memory: 1, ratio: 1e6 }],
      30,
    )!;
    expect(fit.mean).toBeCloseTo((walk[n - 1]! - walk[0]!) / (n - 1), 6);
  });

  it('fits a level for each stretch', () => {
    const stretch = Int32Array.from({ length: n }, (_, i) => (i < 25 ? 0 : 1));
    const jump = y.map((value, i) => value + (stretch[i] === 0 ? 0 : 5));
    const fit = fitTempo({ y: jump, columns: [t], stretch, place }, correctingModels, 30)!;
    expect(fit.quantile(0.025)).toBeLessThan(0.3);
    expect(fit.quantile(0.975)).toBeGreaterThan(0.3);
    expect(fit.quantile(0.975) - fit.quantile(0.025)).toBeLessThan(0.1);
  });

  it('believes less where deviations may add up', () => {
    const series = { y, columns: [t], stretch: new Int32Array(n), place };
    const width = (models: typeof freeModels) => {
      const fit = fitTempo(series, models, 30)!;
      return fit.quantile(0.975) - fit.quantile(0.025);
    };
    expect(width(freeModels)).toBeGreaterThan(width(correctingModels));
  });

  it('gives up where every stretch is a single stroke', () => {
    const alone = Int32Array.from({ length: n }, (_, i) => i);
    expect(fitTempo({ y, columns: [t], stretch: alone, place }, freeModels, 30)).toBeNull();
  });
});

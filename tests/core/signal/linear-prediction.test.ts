import { describe, expect, it } from 'vitest';
import { linearPrediction, predictionResidual } from '../../../src/core/signal/linear-prediction.ts';
import { power, whiteNoise } from '../../support/signals.ts';

/** What an all-pole filter makes of `input`: y[n] = x[n] + Σ a[k]·y[n−1−k]. */
function allPole(input: Float32Array, a: readonly number[]): Float32Array {
  const out = new Float64Array(input.length);
  input.forEach((x, n) => {
    out[n] = a.reduce((sum, value, k) => sum + value * (out[n - 1 - k] ?? 0), x);
  });
  return Float32Array.from(out);
}

const impulse = (length: number) => Float32Array.from({ length }, (_, n) => (n === 0 ? 1 : 0));

describe('linear prediction by autocorrelation', () => {
  it.each([[[1.5, -0.8]], [[0.9]], [[0.4, 0.3, -0.2]], [[2.1, -1.73, 0.52]]])(
    'finds an all-pole filter %j from its whole response, exactly',
    (a) => {
      // The autocorrelation of an all-pole response obeys the filter's own recursion (Makhoul 1975, section II).
      const response = allPole(impulse(2000), a);
      const { coefficients, residualPower } = linearPrediction(response, 0, 2000, a.length, 0);
      a.forEach((value, k) => {
        expect(coefficients[k]).toBeCloseTo(value, 5);
      });
      expect(residualPower * 2000).toBeCloseTo(1, 5);
      const residual = predictionResidual({ coefficients, residualPower }, response, 0, 2000);
      expect(residual[0]).toBeCloseTo(1, 6);
      expect(Math.sqrt(power(residual, 1) * 1999)).toBeLessThan(1e-4);
    },
  );

  it('finds an autoregression from its noise within its standard errors', () => {
    const a = [1.5, -0.8];
    const count = 40_000;
    const { coefficients, residualPower } = linearPrediction(
      allPole(whiteNoise(count, 0.2, 3), a),
      0,
      count,
      2,
      0,
    );
    // Var of both coefficients of an AR(2): (1 − a2²)/n (Box & Jenkins, Time Series Analysis, quoted from memory).
    const error = Math.sqrt((1 - 0.8 ** 2) / count);
    expect(Math.abs(coefficients[0]! - 1.5)).toBeLessThan(4 * error);
    expect(Math.abs(coefficients[1]! + 0.8)).toBeLessThan(4 * error);
    expect(Math.abs(residualPower / 0.04 - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
  });

  it('solves the normal equations of Durbin’s recursion by hand', () => {
    // x = 2, 1: r0 = 5, r1 = 2, so a = 2/5 and the error power (5 − 4/5)/2.
    const { coefficients, residualPower } = linearPrediction(Float32Array.of(2, 1), 0, 2, 1, 0);
    expect(coefficients[0]).toBeCloseTo(0.4, 12);
    expect(residualPower).toBeCloseTo(2.1, 12);
  });

  it('promises less with a ridge, and nothing of silence', () => {
    const tone = Float32Array.from({ length: 1000 }, (_, n) => Math.sin(0.3 * n));
    const bare = linearPrediction(tone, 0, 1000, 12, 0).residualPower;
    const ridged = linearPrediction(tone, 0, 1000, 12, 0.01).residualPower;
    expect(ridged).toBeGreaterThan(bare);
    expect(ridged).toBeGreaterThan(0.005 * power(tone));
    const { coefficients, residualPower } = linearPrediction(new Float32Array(500), 0, 500, 12, 1e-4);
    expect(coefficients.every((value) => value === 0)).toBe(true);
    expect(residualPower).toBeLessThan(1e-20);
  });

  it('takes what lies before the array for silence', () => {
    const prediction = { coefficients: Float64Array.of(0.5, 0.25), residualPower: 0 };
    const samples = Float32Array.of(1, 1, 1, 1);
    expect([...predictionResidual(prediction, samples, 0, 4)]).toEqual([1, 0.5, 0.25, 0.25]);
    expect([...predictionResidual(prediction, samples, 2, 4)]).toEqual([0.25, 0.25]);
  });
});

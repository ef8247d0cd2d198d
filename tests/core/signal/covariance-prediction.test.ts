import { describe, expect, it } from 'vitest';
import { burg } from '../../../src/core/signal/burg.ts';
import { covariancePrediction } from '../../../src/core/signal/covariance-prediction.ts';
import { extrapolate } from '../../../src/core/signal/extrapolate.ts';
import { power, toDb, whiteNoise } from '../../support/signals.ts';

const damped = (length: number, parts: readonly (readonly [hz: number, decay: number])[]) =>
  Float64Array.from({ length }, (_, n) =>
    parts.reduce(
      (sum, [hz, decay], i) =>
        sum + Math.exp((-n * decay) / 6000) * Math.cos((2 * Math.PI * hz * n) / 6000 + i),
      0,
    ),
  );

describe('covariancePrediction', () => {
  it('knows a cosine by its recursion x[n] = 2cos(ω)·x[n−1] − x[n−2]', () => {
    const omega = 0.7;
    const cosine = Float64Array.from({ length: 200 }, (_, n) => Math.cos(omega * n));
    const a = covariancePrediction(cosine, 10, 200, 2);
    expect(a[0]).toBeCloseTo(2 * Math.cos(omega), 3);
    expect(a[1]).toBeCloseTo(-1, 3);
  });

  it('knows a damped vibration: x[n] = 2r·cos(ω)·x[n−1] − r²·x[n−2]', () => {
    const r = Math.exp(-60 / 6000);
    const omega = (2 * Math.PI * 430) / 6000;
    const a = covariancePrediction(damped(300, [[430, 60]]), 2, 300, 2);
    expect(a[0]).toBeCloseTo(2 * r * Math.cos(omega), 3);
    expect(a[1]).toBeCloseTo(-r * r, 3);
  });

  it('solves the normal equations by hand', () => {
    // Best a for 2 ≈ a·1, 4 ≈ a·2, 5 ≈ a·4: (2 + 8 + 20)/(1 + 4 + 16).
    const samples = Float64Array.of(9, 1, 2, 4, 5, 9);
    expect(covariancePrediction(samples, 2, 5, 1)[0]).toBeCloseTo(30 / 21, 4);
  });

  it('finds an autoregression from its noise within its standard errors', () => {
    const noise = whiteNoise(40_000, 1, 6);
    const x = new Float64Array(40_000);
    for (let n = 0; n < x.length; n++) x[n] = noise[n]! + 1.5 * (x[n - 1] ?? 0) - 0.8 * (x[n - 2] ?? 0);
    const a = covariancePrediction(x, 2, x.length, 2);
    // Var of both coefficients of an AR(2): (1 − a2²)/n (Box & Jenkins, Time Series Analysis, quoted from memory).
    const error = Math.sqrt((1 - 0.8 ** 2) / x.length);
    expect(Math.abs(a[0]! - 1.5)).toBeLessThan(4 * error);
    expect(Math.abs(a[1]! + 0.8)).toBeLessThan(4 * error);
  });

  it("goes on as a head would that rings at some frequencies, closer than Burg's method", () => {
    const modes = [
      [190, 25],
      [430, 40],
      [760, 50],
      [1320, 60],
    ] as const;
    const ringing = Float32Array.from(damped(520, modes));
    const leftOf = (a: Float64Array) => {
      const expected = extrapolate(a, ringing, 480, 28);
      return toDb(power(expected.map((value, n) => value - ringing[480 + n]!)) / power(ringing, 480, 508));
    };
    const left = leftOf(covariancePrediction(ringing, 48, 480, 48));
    expect(left).toBeLessThan(-40);
    expect(left).toBeLessThan(leftOf(burg(ringing, 0, 480, 48)) - 10);
  });

  it('predicts nothing of silence', () => {
    expect(covariancePrediction(new Float32Array(100), 20, 100, 8)).toEqual(new Float64Array(8));
  });
});

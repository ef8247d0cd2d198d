import { describe, expect, it } from 'vitest';
import { covariancePrediction } from '../../../src/core/signal/covariance-prediction.ts';
import { extrapolate } from '../../../src/core/signal/extrapolate.ts';
import { power, toDb } from '../../support/signals.ts';

const damped = (length: number, hz: number, decay: number, phase: number) =>
  Float32Array.from(
    { length },
    (_, n) => Math.exp((-n * decay) / 6000) * Math.cos((2 * Math.PI * hz * n) / 6000 + phase),
  );

describe('extrapolate', () => {
  it('goes on as the sound would have: a head with three vibrations', () => {
    const parts = [damped(600, 190, 25, 0.3), damped(600, 430, 40, 1), damped(600, 1320, 60, 2)];
    const ringing = Float32Array.from({ length: 600 }, (_, n) =>
      parts.reduce((sum, part) => sum + part[n]!, 0),
    );
    const expected = extrapolate(covariancePrediction(ringing, 48, 480, 48), ringing, 480, 30);
    const left = expected.map((value, n) => value - ringing[480 + n]!);
    expect(toDb(power(left) / power(ringing, 480, 510))).toBeLessThan(-25);
  });

  it('starts from the end it is told, and takes what lies before the array for silence', () => {
    const twice = Float64Array.of(0, 1);
    expect([...extrapolate(twice, Float32Array.of(1, 2, 3, 4), 2, 4)]).toEqual([1, 2, 1, 2]);
    expect([...extrapolate(Float64Array.of(1, 1, 1), Float32Array.of(1, 1), 2, 3)]).toEqual([2, 4, 7]);
    expect([...extrapolate(Float64Array.of(0.5), new Float32Array(0), 0, 2)]).toEqual([0, 0]);
  });
});

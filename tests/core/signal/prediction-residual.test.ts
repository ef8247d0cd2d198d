import { describe, expect, it } from 'vitest';
import { predictionResidual } from '../../../src/core/signal/prediction-residual.ts';

/** What an all-pole filter makes of `input`: y[n] = x[n] + Σ a[k]·y[n−1−k]. */
function allPole(input: Float32Array, a: readonly number[]): Float32Array {
  const out = new Float64Array(input.length);
  input.forEach((x, n) => {
    out[n] = a.reduce((sum, value, k) => sum + value * (out[n - 1 - k] ?? 0), x);
  });
  return Float32Array.from(out);
}

describe('predictionResidual', () => {
  it('undoes an all-pole filter: its response leaves the impulse that went in', () => {
    const impulse = Float32Array.of(1, ...new Array<number>(300).fill(0));
    for (const a of [[1.5, -0.8], [0.9], [2.1, -1.73, 0.52]]) {
      const left = predictionResidual(Float64Array.from(a), allPole(impulse, a), 0, 301);
      left.forEach((value, n) => {
        expect(value).toBeCloseTo(impulse[n]!, 5);
      });
    }
  });

  it('takes what lies before the array for silence', () => {
    const prediction = Float64Array.of(0.5, 0.25);
    const samples = Float32Array.of(1, 1, 1, 1);
    expect([...predictionResidual(prediction, samples, 0, 4)]).toEqual([1, 0.5, 0.25, 0.25]);
    expect([...predictionResidual(prediction, samples, 2, 4)]).toEqual([0.25, 0.25]);
  });
});

import { describe, expect, it } from 'vitest';
import { wanderDegrees } from '../../../src/core/measures/wander-degrees.ts';

describe('wanderDegrees', () => {
  // Brownian motion less its least-squares line on 0…1: ∫ of the variance is 1/15 and ∫∫ of the squared covariance
  // 11/12600 (worked out by hand from the covariance), so that E²/∫∫ = (1/15)²/(11/12600) = 5.09.
  it.each([400, 2000])('of a random walk over %i beats come near 5.09', (beats) => {
    expect(wanderDegrees({ memory: 1, ratio: 100 }, { beats, perBeat: 3 })).toBeGreaterThan(4.6);
    expect(wanderDegrees({ memory: 1, ratio: 100 }, { beats, perBeat: 3 })).toBeLessThan(5.6);
  });

  // Straight from the definition: the covariance of the strokes (the walk's, min(i, j), or the one that fades), smoothed
  // by an even window of four beats with half weight on its ends, a line taken out as a matrix, then 2 E²/Var of its trace
  // (Satterthwaite 1946).
  it.each([
    { memory: 1, ratio: 0.5, beats: 12, perBeat: 3 },
    { memory: 1, ratio: 3, beats: 20, perBeat: 1 },
    { memory: 0.8, ratio: 0.7, beats: 16, perBeat: 2 },
    { memory: 0.3, ratio: 4, beats: 9, perBeat: 3 },
    { memory: 0.9, ratio: 2, beats: 60, perBeat: 2 },
    { memory: 0.5, ratio: 1, beats: 2, perBeat: 3 },
  ])('are those of the matrices: %o', ({ memory, ratio, beats, perBeat }) => {
    const places = Math.min(40, Math.max(4, beats));
    const step = Math.max(1, Math.round((beats * perBeat) / places));
    const half = 2 * perBeat;
    const raw = (i: number, j: number) =>
      (memory === 1 ? ratio * Math.min(i, j) : (ratio * memory ** Math.abs(i - j)) / (1 - memory ** 2)) +
      (i === j ? 1 : 0);
    const window = Array.from(
      { length: 2 * half + 1 },
      (_, k) => [k, k % (2 * half) === 0 ? 0.5 : 1] as const,
    );
    const smoothed = (i: number, j: number) =>
      window.reduce(
        (sum, [k, w]) => sum + window.reduce((s, [l, v]) => s + w * v * raw(i + k, j + l), 0),
        0,
      ) /
      (2 * half) ** 2;
    const range = Array.from({ length: places }, (_, i) => i);
    const covariance = range.map((i) => range.map((j) => smoothed(step * i, step * j)));
    const mean = (places - 1) / 2;
    const spread = range.reduce((sum, i) => sum + (i - mean) ** 2, 0);
    const away = range.map((i) =>
      range.map((j) => (i === j ? 1 : 0) - 1 / places - ((i - mean) * (j - mean)) / spread),
    );
    const times = (a: number[][], b: number[][]) =>
      range.map((i) => range.map((j) => range.reduce((sum, k) => sum + a[i]![k]! * b[k]![j]!, 0)));
    const own = times(times(away, covariance), away);
    const trace = range.reduce((sum, i) => sum + own[i]![i]!, 0);
    const squared = own.flat().reduce((sum, value) => sum + value * value, 0);
    expect(wanderDegrees({ memory, ratio }, { beats, perBeat })).toBeCloseTo(
      Math.max(1, (trace * trace) / squared),
      6,
    );
  });

  it('grow with the length where the memory is short', () => {
    const short = wanderDegrees({ memory: 0.3, ratio: 1 }, { beats: 20, perBeat: 3 });
    const long = wanderDegrees({ memory: 0.3, ratio: 1 }, { beats: 60, perBeat: 3 });
    expect(long / short).toBeGreaterThan(2.5);
  });
});

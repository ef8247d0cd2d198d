import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { envelope } from '../../../src/core/signal/envelope.ts';
import { floatSource, watchedSource } from '../../support/float-source.ts';
import { sine, whiteNoise } from '../../support/signals.ts';

describe('envelope', () => {
  it('is the largest magnitude of every part', () => {
    const samples = Float32Array.of(0, 0.5, -0.25, 0, 0.75, -1, 0.125, 0.25);
    expect(envelope(floatSource(10, samples), 4)).toEqual([0.5, 0.25, 1, 0.25]);
    expect(envelope(floatSource(10, samples, samples.toReversed()), 2)).toEqual([1, 1]);
  });

  it('has every sample in one part: none is lost, none counted where it is not', () => {
    const ofLengths = fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 1, max: 400 }));
    fc.assert(
      fc.property(ofLengths, fc.nat(), ([length, slices], seed) => {
        const samples = whiteNoise(length, 0.2, seed);
        const found = envelope(floatSource(8000, samples), slices);
        const expected = new Array<number>(slices).fill(0);
        samples.forEach((value, n) => {
          const slice = Math.floor((n * slices) / length);
          expected[slice] = Math.max(expected[slice]!, Math.abs(value));
        });
        expect(found).toEqual(expected);
      }),
      { numRuns: 200 },
    );
  });

  it('goes through a long recording block by block', () => {
    const { source, longestRead } = watchedSource(floatSource(48_000, sine(400_000, 48_000, 100, 0.5)));
    const found = envelope(source, 90);
    expect(found.every((peak) => Math.abs(peak - 0.5) < 1e-4)).toBe(true);
    expect(longestRead()).toBeLessThan(100_000);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growingSource } from '../../../src/core/signal/growing-source.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

describe('growingSource', () => {
  const samples = whiteNoise(200_000, 0.1, 1);

  it('reads as the whole recording that it is by now', () => {
    const place = fc.integer({ min: 0, max: samples.length });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), place, place, (cuts, from, count) => {
        const growing = growingSource(48_000);
        let at = 0;
        for (const cut of cuts.toSorted((a, b) => a - b)) {
          growing.add(at, samples.slice(at, cut));
          at = cut;
          const there = growing.source();
          const plain = floatSource(48_000, samples.slice(0, cut));
          expect(there).toMatchObject({ sampleRate: 48_000, channels: 1, length: cut });
          expect(there.read(0, from - 100, from + (count % 5000))).toEqual(
            plain.read(0, from - 100, from + (count % 5000)),
          );
        }
      }),
      { numRuns: 40, seed: 1 },
    );
  });

  it('keeps what was there, fills what is missing with silence and leaves out what came before', () => {
    const growing = growingSource(48_000);
    growing.add(0, Float32Array.of(1, 2));
    const before = growing.source();
    growing.add(4, Float32Array.of(5));
    growing.add(3, Float32Array.of(8, 9, 6));
    expect([...before.read(0, 0, 6)]).toEqual([1, 2, 0, 0, 0, 0]);
    expect([...growing.source().read(0, -1, 7)]).toEqual([0, 1, 2, 0, 0, 5, 6, 0]);
  });
});

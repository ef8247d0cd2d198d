import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { envelope } from '../../../src/core/signal/envelope.ts';
import { envelopeOfPeaks, followPeaks } from '../../../src/core/signal/peak-course.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

describe('envelopeOfPeaks', () => {
  it('is the envelope, however the recording came in pieces', () => {
    const cases = fc.record({
      length: fc.integer({ min: 0, max: 9000 }),
      slices: fc.integer({ min: 1, max: 400 }),
      pieces: fc.array(fc.integer({ min: 1, max: 1500 }), { maxLength: 12 }),
      seed: fc.nat(),
    });
    fc.assert(
      fc.property(cases, ({ length, slices, pieces, seed }) => {
        const samples = whiteNoise(length, 0.2, seed);
        const follow = followPeaks();
        let come = 0;
        for (const piece of pieces) {
          come = Math.min(length, come + piece);
          follow(floatSource(8000, samples.slice(0, come)));
        }
        const whole = floatSource(8000, samples);
        expect(envelopeOfPeaks(whole, slices, follow(whole))).toEqual(envelope(whole, slices));
      }),
      { numRuns: 300 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beforeStroke, strokeCuts, takeOver } from '../../../src/report/listening/stroke-cuts.ts';

describe('strokeCuts', () => {
  it('cuts shortly before each stroke', () => {
    const cuts = strokeCuts([1, 1.2]);
    expect(cuts.map(({ stroke }) => stroke)).toEqual([0, 1]);
    expect(cuts[0]!.at).toBeCloseTo(0.994, 9);
    expect(cuts[1]!.at).toBeCloseTo(1.194, 9);
  });

  it('keeps strokes together that are closer than a taking over, and leaves no attack in one', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { maxLength: 60 }), (times) => {
        const onsets = times.sort((a, b) => a - b);
        const cuts = strokeCuts(onsets);
        cuts.forEach(({ stroke, at }, i) => {
          expect(at + takeOver).toBeLessThan(onsets[stroke]!);
          if (i > 0) expect(at).toBeGreaterThan(onsets[cuts[i - 1]!.stroke]! + takeOver - 1e-9);
        });
        expect(beforeStroke).toBeGreaterThan(takeOver);
      }),
    );
  });
});

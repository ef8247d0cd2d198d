import { describe, expect, it } from 'vitest';
import type { HandStroke } from '../../../src/core/alignment/hand-contrasts.ts';
import { handEvidence } from '../../../src/core/alignment/hand-evidence.ts';
import { seeded } from './seeded.ts';

interface Playing {
  readonly seed: number;
  readonly strokes?: number;
  /** Difference between the hands in one figure, in its spread. */
  readonly apart?: number;
  /** Strokes from which hands are the other way round, and from which a new segment begins. */
  readonly swappedFrom?: number;
  readonly segmentFrom?: number;
  /** Correlation from stroke to stroke, and change of timbre with level (dB for each dB). */
  readonly drift?: number;
  readonly slope?: number;
  /** Written hands go with the partial. */
  readonly confounded?: boolean;
}

const figures = 12;

/** Strokes with timbres out of normal noise, hand to hand in triplets. */
const played = (p: Playing): HandStroke[] => {
  const { seed, strokes = 96, apart = 0, drift = 0, slope = 0, confounded = false } = p;
  const random = seeded(seed);
  const noise = Array.from({ length: figures }, () => random.normal());
  return Array.from({ length: strokes }, (_, i) => {
    const partial = i % 3;
    const right = confounded ? partial !== 2 : i % 2 === 0;
    const truly = right !== i >= (p.swappedFrom ?? strokes);
    const levelDb = (partial === 0 ? -10 : -25) + 2 * random.normal();
    noise.forEach((x, f) => {
      noise[f] = drift * x + Math.sqrt(1 - drift * drift) * random.normal();
    });
    const values = noise.map(
      (x, f) => x + slope * levelDb + (f === 3 && truly ? apart : 0) + (partial === 0 ? 5 : 0),
    );
    return {
      hand: right ? 'R' : 'L',
      like: `${partial}`,
      segment: i >= (p.segmentFrom ?? strokes) ? 1 : 0,
      levelDb,
      timbre: { values, errors: values.map(() => 0.5), cut: false },
    };
  });
};

describe('handEvidence', () => {
  it('confirms hands that sound different', () => {
    const { says, swapped, distance } = handEvidence(played({ seed: 1, apart: 3 }));
    expect(says).toBe('confirmed');
    expect([...swapped]).toEqual([]);
    expect(distance).toBeGreaterThan(2);
    expect(distance).toBeLessThan(4.5);
  });

  it.each([
    ['noise', {}],
    ['a drift', { drift: 0.9 }],
    ['timbre that goes with level', { slope: 0.5 }],
  ])('keeps its chance of a false claim in %s', (_, change) => {
    const results = Array.from({ length: 400 }, (_, seed) => handEvidence(played({ seed, ...change })));
    expect(results.filter(({ says }) => says !== 'nothing').length).toBeLessThanOrEqual(
      0.01 * results.length,
    );
    expect(results.filter(({ swapped }) => swapped.size > 0)).toEqual([]);
    // Hotelling's chance is exact for normal noise: one in twenty lies below 0.05.
    expect(results.filter(({ chance }) => chance < 0.05).length).toBeLessThan(0.09 * results.length);
  });

  it('knows the segment that is led by the other hand', () => {
    for (let seed = 0; seed < 20; seed++) {
      const found = handEvidence(played({ seed, strokes: 144, apart: 3, swappedFrom: 96, segmentFrom: 96 }));
      expect([found.says, ...found.swapped]).toEqual(['confirmed', 1]);
    }
  });

  it('contradicts hands that change places within a segment', () => {
    for (let seed = 0; seed < 20; seed++)
      expect(handEvidence(played({ seed, strokes: 216, apart: 3, swappedFrom: 144 })).says).toBe(
        'contradicted',
      );
  });

  it('says the same of a take swapped as a whole as of one that is not', () => {
    const { says, swapped } = handEvidence(played({ seed: 4, apart: 3, swappedFrom: 0 }));
    expect([says, swapped.size]).toEqual(['confirmed', 0]);
  });

  it('says nothing where the hand goes with the partial, and of nothing', () => {
    expect(handEvidence(played({ seed: 5, apart: 4, confounded: true })).says).toBe('nothing');
    expect(handEvidence([]).says).toBe('nothing');
  });
});

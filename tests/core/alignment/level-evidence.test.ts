import { describe, expect, it } from 'vitest';
import { findLevels, levelEvidence } from '../../../src/core/alignment/level-evidence.ts';
import { seeded } from './seeded.ts';

const take = (ratioDb: number, count = 300, seed = 1) => {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, i) => (i % 3 === 0 ? -30 + ratioDb : -30) + 1.8 * random.normal());
};

describe('findLevels', () => {
  it('finds both levels', () => {
    for (const ratioDb of [8, 14, 25]) {
      const model = findLevels(take(ratioDb), 1 / 3)!;
      expect(Math.abs(model.tapDb + 30)).toBeLessThan(0.7);
      expect(Math.abs(model.accentDb - model.tapDb - ratioDb)).toBeLessThan(1);
    }
  });

  it('finds none in strokes of one level, nor where the exercise asks for one', () => {
    const misses = Array.from({ length: 40 }, (_, i) => findLevels(take(0, 120, i), 1 / 3)).filter(
      (m) => m !== null,
    );
    for (const model of misses) expect(model.accentDb - model.tapDb).toBeLessThan(6);
    expect(findLevels(take(14), 0)).toBeNull();
    expect(findLevels(take(14), 1)).toBeNull();
    expect(findLevels([-20, -30], 1 / 3)).toBeNull();
  });
});

describe('levelEvidence', () => {
  const model = { accentDb: -16, tapDb: -30, accentSpreadDb: 2, tapSpreadDb: 2, accentShare: 1 / 3 };
  const { asAccent, asTap } = levelEvidence([-16, -30, -60], model);

  it('speaks for the nearer level, and for neither far from both', () => {
    expect(asAccent[0]).toBeGreaterThan(0.9);
    expect(asTap[0]).toBeLessThan(-1.5);
    expect(asTap[1]).toBeGreaterThan(0.3);
    expect(asAccent[1]).toBeLessThan(-2);
    expect(Math.abs(asAccent[2]!)).toBeLessThan(0.1);
  });

  it('says on average nothing: the likelihoods, weighted by their shares, sum to the one without knowledge', () => {
    for (let i = 0; i < 3; i++) {
      expect(Math.exp(asAccent[i]!) / 3 + (2 * Math.exp(asTap[i]!)) / 3).toBeCloseTo(1, 12);
    }
  });

  it('says nothing without a model', () => {
    expect([...levelEvidence([-16, -30], null).asAccent]).toEqual([0, 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { geometricMeanScore, meanScore } from '../../../src/core/scoring/combine-scores.ts';

const part = (score: number, low = score, high = score, weight = 1) => ({
  weight,
  score: { score, low, high, word: 'nearly' as const },
});

describe('meanScore', () => {
  it('weighs the parts and adds the halves of their intervals in quadrature', () => {
    // (3 · 80 + 1 · 60)/4 = 75; below: sqrt((0.75 · 8)² + (0.25 · 32)²) = sqrt(36 + 64) = 10; above: 0.75 · 4 = 3
    expect(meanScore([part(80, 72, 84, 3), part(60, 28, 60)])).toEqual({
      score: 75,
      low: 65,
      high: 78,
      word: 'nearly',
    });
  });

  it('leaves a single part as it is', () => {
    expect(meanScore([part(90, 85, 95)])).toMatchObject({ score: 90, low: 85, high: 95, word: 'secure' });
  });
});

describe('geometricMeanScore', () => {
  it('lets a weak part show: 90 and 40 make 60, not 65', () => {
    expect(geometricMeanScore([part(90), part(40)]).score).toBeCloseTo(60, 9);
  });

  it('counts weights as repetitions', () => {
    const twice = geometricMeanScore([part(80, 70, 90), part(80, 70, 90), part(50, 50, 50)]).score;
    expect(geometricMeanScore([part(80, 70, 90, 2), part(50, 50, 50)]).score).toBeCloseTo(twice, 9);
  });

  it('puts the interval on the logarithms: halves of a factor 0.8 in both of two parts make 0.8^(1/sqrt 2)', () => {
    const { score, low } = geometricMeanScore([part(50, 40, 50), part(50, 40, 50)]);
    expect(low / score).toBeCloseTo(0.8 ** Math.SQRT1_2, 9);
  });

  it('stays finite when a part is 0', () => {
    const { score, low } = geometricMeanScore([part(0, 0, 1), part(100)]);
    expect(score).toBeGreaterThan(0);
    expect(low).toBeGreaterThanOrEqual(0);
  });
});

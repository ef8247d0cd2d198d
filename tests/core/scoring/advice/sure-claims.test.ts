import { describe, expect, it } from 'vitest';
import { chanceOf, sureClaims } from '../../../../src/core/scoring/advice/sure-claims.ts';
import { input, made } from './made-input.ts';

const outcome = (value: number, low: number, high: number, strokes = 480) => ({
  state: 'measured' as const,
  value,
  low,
  high,
  strokes,
  pointsAt: [],
});

describe('chanceOf', () => {
  it('is the example', () =>
    expect(chanceOf({ outcome: outcome(6, 4, 8), least: 0, most: 4 })).toBeCloseTo(0.025, 10));

  it('is 1 for a value that would do', () =>
    expect(chanceOf({ outcome: outcome(3, -9, 4), least: 0, most: 4 })).toBe(1));

  // scipy 1.17.1: t.sf(1.5 * t.ppf(0.975, 11), 11).
  it('falls with the distance as Student has it', () =>
    expect(chanceOf({ outcome: outcome(-7, -11, -3, 72), least: -1, most: 1 })).toBeCloseTo(
      0.00352972779889727,
      12,
    ));

  it('takes spreads by their factor, either side alike', () => {
    const above = chanceOf({ outcome: outcome(4, 2, 9), least: 0, most: 1.5, byFactor: true });
    const below = chanceOf({
      outcome: outcome(1 / 4, 1 / 9, 1 / 2),
      least: 1 / 1.5,
      most: 2,
      byFactor: true,
    });
    expect(above).toBeCloseTo(below, 12);
  });
});

describe('sureClaims', () => {
  const [accents, taps] = [made('accent-spread', 4, 2.4), made('tap-spread', 4, 1)];
  it('is sure of one question where the interval is', () =>
    expect(sureClaims(input([accents]))('accent-spread')).toBe(true));

  it('wants more when many are asked', () => {
    const nothing = ['placement-share', 'accent-bend-share', 'hand-offset-share', 'tempo-change'].map((id) =>
      made(id, 0, 1),
    );
    const isSure = sureClaims(input([accents, taps, ...nothing]));
    expect(isSure('accent-spread')).toBe(false);
    expect(isSure('tap-spread')).toBe(true);
  });

  it('knows nothing of what was not asked', () => {
    const isSure = sureClaims(input([made('npvi', 9, 1), made('tap-spread', 4, 1, { hand: 'L' })]));
    expect(isSure('npvi')).toBe(false);
    expect(isSure('tap-spread', { hand: 'L' })).toBe(false);
  });
});

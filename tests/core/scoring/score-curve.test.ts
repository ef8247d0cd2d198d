import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  distanceFromPerfect,
  scoreOfDistance,
  scoreOfValue,
  shownScore,
  wordOfScore,
} from '../../../src/core/scoring/score-curve.ts';

const timing = { perfect: 0, secure: 5, nearly: 10 };
const ratio = { perfect: { min: 8, max: 20 }, secure: 1, nearly: 3 };

describe('scoreOfDistance', () => {
  it('goes through 100, 85 and 60 at perfect and the two points', () => {
    expect(scoreOfDistance(0, timing)).toBe(100);
    expect(scoreOfDistance(5, timing)).toBeCloseTo(85, 9);
    expect(scoreOfDistance(10, timing)).toBeCloseTo(60, 9);
  });

  it('gives the worked example, reckoned by hand from the formula', () => {
    // k = ln(3.7778)/ln 2 = 1.9175; h = 10 / 0.66667^(1/1.9175) = 12.355; (7/12.355)^1.9175 = 0.3364; 100/1.3364
    expect(scoreOfDistance(7, timing)).toBeCloseTo(74.83, 2);
  });

  it('falls with distance for any two points and stays within 0 and 100', () => {
    const points = fc.record({
      secure: fc.double({ min: 0.01, max: 50, noNaN: true }),
      more: fc.double({ min: 1.1, max: 9, noNaN: true }),
    });
    const distance = fc.double({ min: 0, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(points, distance, distance, ({ secure, more }, a, b) => {
        const curve = { perfect: 0, secure, nearly: secure * more };
        const [near, far] = [scoreOfDistance(Math.min(a, b), curve), scoreOfDistance(Math.max(a, b), curve)];
        return near >= far && far >= 0 && near <= 100;
      }),
    );
  });
});

describe('distanceFromPerfect', () => {
  it('counts from a value in both directions and from the near edge of a band', () => {
    expect(distanceFromPerfect(-3, 0)).toBe(3);
    expect(distanceFromPerfect(0.97, 1)).toBeCloseTo(0.03, 12);
    expect([6, 8, 14, 20, 23].map((v) => distanceFromPerfect(v, ratio.perfect))).toEqual([2, 0, 0, 0, 3]);
  });
});

describe('scoreOfValue', () => {
  it('gives the worked example of a band', () => {
    const score = scoreOfValue({ value: 6, low: 5, high: 9 }, ratio);
    expect(score.score).toBeCloseTo(71.01, 2);
    expect(score.low).toBeCloseTo(60, 9);
    expect(score.high).toBe(100);
    expect(score.word).toBe('nearly');
  });

  it('reaches 100 when the interval holds the perfect value, and takes the farther end for the low score', () => {
    const score = scoreOfValue({ value: 1, low: -10, high: 5 }, timing);
    expect(score.high).toBe(100);
    expect(score.low).toBeCloseTo(60, 9);
  });

  it('spans a whole band that the interval covers on both sides', () => {
    const score = scoreOfValue({ value: 14, low: 5, high: 30 }, ratio);
    expect(score).toMatchObject({ score: 100, high: 100 });
    expect(score.low).toBeLessThan(30);
  });

  it('holds the value between its ends for every ordered interval', () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(number, number, number, fc.constantFrom(timing, ratio), (a, b, c, points) => {
        const [low, value, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        const score = scoreOfValue({ value, low, high }, points);
        return score.low <= score.score && score.score <= score.high;
      }),
    );
  });
});

describe('scoreOfValue and a band that is perfect', () => {
  const band = { perfect: { min: 8, max: 20 }, secure: 1, nearly: 3 };
  const high = (low: number, to: number) => scoreOfValue({ value: (low + to) / 2, low, high: to }, band).high;
  it('reaches 100 where the interval touches the band, on either side or round it', () => {
    for (const [low, to] of [
      [6, 8],
      [20, 23],
      [10, 12],
      [5, 25],
    ] as const)
      expect(high(low, to), `${low} to ${to}`).toBe(100);
  });
  it('stays below where it does not', () => {
    for (const [low, to] of [
      [5, 7],
      [21, 23],
    ] as const)
      expect(high(low, to), `${low} to ${to}`).toBeCloseTo(85, 9);
  });
});

describe('wordOfScore', () => {
  it('changes at 85 and 60, both points included', () => {
    expect([100, 85, 84.9, 60, 59.9, 0].map(wordOfScore)).toEqual([
      'secure',
      'secure',
      'nearly',
      'nearly',
      'not-yet',
      'not-yet',
    ]);
    expect(wordOfScore(scoreOfDistance(5, timing))).toBe('secure');
    expect(wordOfScore(scoreOfDistance(10, timing))).toBe('nearly');
  });
});

describe('shownScore', () => {
  it('rounds, but never past the word', () => {
    expect([84.4, 84.7, 85, 59.6, 60.2, 99.6, 0.3].map(shownScore)).toEqual([84, 84, 85, 59, 60, 100, 0]);
    for (let score = 0; score <= 100; score += 0.1)
      expect(wordOfScore(shownScore(score))).toBe(wordOfScore(score));
  });
});

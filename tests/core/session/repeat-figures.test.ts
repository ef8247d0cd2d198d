import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../../src/core/scoring/measure-points.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { brokeFrom, repeatFigures } from '../../../src/core/session/repeat-figures.ts';
import { gradedSample } from '../../end-to-end/sample-take.ts';

describe('repeatFigures', () => {
  it('counts the missed and extra strokes of each repeat as the truth of the take has them', () => {
    const { result, truth } = gradedSample('missed-and-extra');
    const figures = repeatFigures(result, pointsOf(steady));
    expect(figures.map(({ repeat }) => repeat)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    const played = new Set(truth.strokes.map(({ slot }) => slot));
    const missed = figures.map((_, r) => [0, 1, 2, 3, 4, 5].filter((i) => !played.has(6 * r + i)).length);
    expect(figures.map((one) => one.missed)).toEqual(missed);
    const others = truth.strokes.filter(({ role }) => role === 'extra' || role === 'bounce').length;
    expect(figures.reduce((sum, { extra }) => sum + extra, 0)).toBeLessThanOrEqual(others);
    for (const { missed: lost, extra, score } of figures)
      if (lost + extra > 0) expect(score).toBeLessThan(60);
  });

  it('finds sloppy repeats more uneven than steady ones', () => {
    const uneven = (name: string) =>
      repeatFigures(gradedSample(name).result, pointsOf(steady)).map(({ unevenShare }) => unevenShare!);
    expect(Math.min(...uneven('sloppy'))).toBeGreaterThan(Math.max(...uneven('accent-one')));
  });
});

describe('brokeFrom', () => {
  const scores = (...list: (number | null)[]) => brokeFrom(list.map((score, repeat) => ({ repeat, score })));
  it('is the repeat from which most of the rest is weak', () => {
    expect(scores(90, 80, 40, 50, 30)).toBe(2);
    expect(scores(90, 40, 90, 50, 30)).toBe(1);
    expect(scores(90, 40)).toBe(1);
  });
  it('passes over a slip that is mended, and what held', () => {
    expect(scores(90, 40, 90, 90)).toBeNull();
    expect(scores(90, 80, null)).toBeNull();
    expect(scores()).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { guessTruth } from '../../../src/core/progress/guess-truth.ts';
import { judgeGuess } from '../../../src/core/progress/judge-guess.ts';
import type { MeasureResult, TakeResult } from '../../../src/core/result/take-result.ts';
import { lineCourses } from '../../../src/core/session/line-course.ts';
import { exampleResult } from '../../support/example-result.ts';

function withFigure(id: string, value: number, low: number, high: number): TakeResult {
  const result = exampleResult();
  const outcome: MeasureResult['outcome'] = {
    state: 'measured',
    value,
    low,
    high,
    strokes: 70,
    pointsAt: [],
  };
  const own: MeasureResult = { id, unit: '%', scope: {}, outcome };
  return { ...result, measures: [own, ...result.measures.filter((one) => one.id !== id)] };
}

describe('guessTruth', () => {
  it.each([
    [2, 0.5, 3.5, 'rushed'],
    [-2, -3.5, -0.5, 'dragged'],
    [0.6, 0.2, 1, 'held'],
    [0.3, -1.2, 1.8, 'held'],
    // Too wide to say.
    [0.3, -4, 4.6, null],
    [2.4, -0.4, 5, null],
  ])('of a tempo that changed by %f %% (%f to %f) says %s', (value, low, high, told) => {
    expect(guessTruth(withFigure('tempo-change', value, low, high)).tempo).toBe(told);
  });

  it.each([
    [0, 0, 4, 'low'],
    [12, 6, 21, 'too-loud'],
    [1, 0, 14, null],
    [4, 1, 9, null],
  ])('of %f %% of taps too near the accents (%f to %f) says %s', (value, low, high, told) => {
    expect(guessTruth(withFigure('tap-ceiling', value, low, high)).taps).toBe(told);
  });

  it('names the line whose repeats score lowest, only if it lies clearly under the next', () => {
    const result = exampleResult();
    const scores = lineCourses(result).map(({ repeats }) => repeats.map(({ score }) => score));
    const mean = scores.map((own) => own.reduce<number>((sum, one) => sum + (one ?? 0), 0) / own.length);
    const [least, next] = mean.toSorted((a, b) => a - b);
    const told = guessTruth(result).worstLine;
    if (next! - least! >= 2) expect(told).toBe(mean.indexOf(least!));
    else expect(told).toBeNull();
    // One line alone is no weakest one.
    const alone = { ...result, sheet: { ...result.sheet, lines: result.sheet.lines.slice(0, 1) } };
    expect(guessTruth(alone).worstLine).toBeNull();
  });
});

describe('judgeGuess', () => {
  it('judges what was answered and what the take tells, and nothing else', () => {
    const result = withFigure('tempo-change', 2, 0.5, 3.5);
    expect(judgeGuess({ worstLine: null, tempo: 'held' }, result)).toEqual([
      { question: 'tempo', guessed: 'held', truth: 'rushed', choices: 3 },
    ]);
    expect(judgeGuess({ worstLine: null, tempo: null, taps: null }, result)).toEqual([]);
    const loud = withFigure('tap-ceiling', 12, 6, 21);
    expect(judgeGuess({ worstLine: null, tempo: null, taps: 'too-loud' }, loud)).toEqual([
      { question: 'taps', guessed: 'too-loud', truth: 'too-loud', choices: 2 },
    ]);
  });
});

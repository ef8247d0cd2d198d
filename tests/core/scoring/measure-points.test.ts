import { describe, expect, it } from 'vitest';
import { pointsOf, pointsOfTake } from '../../../src/core/scoring/measure-points.ts';
import { readRubric } from '../../../src/core/scoring/read-rubric.ts';
import { advanced } from '../../../src/core/scoring/rubrics/advanced.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../../src/core/scoring/score-take.ts';
import { lineCourses } from '../../../src/core/session/line-course.ts';
import { exampleResult } from '../../support/example-result.ts';

const strict = readRubric({
  basedOn: 'steady',
  id: 'strict',
  measures: { 'timing-spread-share': { secure: 0.5, nearly: 1 } },
});

const result = exampleResult();
const scoredBy = (rubric: typeof steady) => {
  const scored = scoreTake({ measures: result.measures, lines: result.sheet.lines, strokes: 71, rubric });
  if (scored.state !== 'scored') throw new Error('no score');
  return { ...result, scores: scored.scores };
};

describe('the points a take was marked by', () => {
  it("are the named rubric's where it is one of the program's own, those of steady without scores", () => {
    expect(scoredBy(advanced).scores.points).toBeUndefined();
    expect(pointsOfTake(scoredBy(advanced))).toEqual(pointsOf(advanced));
    expect(pointsOfTake({ scores: null })).toEqual(pointsOf(steady));
  });

  it("travel with the take where a teacher's file marked it, so that its lines are marked alike", () => {
    const marked = scoredBy(strict);
    expect(pointsOfTake(marked).find(({ measure }) => measure === 'timing-spread-share')).toMatchObject({
      secure: 0.5,
      nearly: 1,
    });
    const worst = (one: typeof marked) =>
      Math.min(...lineCourses(one)[0]!.repeats.map(({ score }) => score!));
    expect(worst(marked)).toBeLessThan(worst(scoredBy(steady)) - 20);
  });
});

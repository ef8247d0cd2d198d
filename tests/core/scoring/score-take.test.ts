import { describe, expect, it } from 'vitest';
import type { MeasureResult, Scope } from '../../../src/core/result/take-result.ts';
import type { Rubric } from '../../../src/core/scoring/rubric.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../../src/core/scoring/score-take.ts';
import { exampleResult } from '../../support/example-result.ts';

const open = { ratioBand: null };
const exact = (id: string, value: number, scope: Scope = {}, strokes = 48): MeasureResult => ({
  id,
  unit: '',
  scope,
  outcome: { state: 'measured', value, low: value, high: value, strokes, pointsAt: [] },
});
const refused = (id: string): MeasureResult => ({
  id,
  unit: '',
  scope: {},
  outcome: { state: 'not-measurable', reason: { code: 'noise', facts: {} } },
});
const criterion = (measure: string, weight = 1) => ({
  measure,
  weight,
  perfect: 0,
  secure: 1,
  nearly: 2,
  source: 'made up',
});
const small: Rubric = {
  id: 'small',
  title: 'Small',
  dimensions: [
    { id: 'one', weight: 1, criteria: [criterion('a', 3), criterion('b')] },
    { id: 'two', weight: 1, criteria: [criterion('c')] },
  ],
};

function scored(...args: Parameters<typeof scoreTake>) {
  const result = scoreTake(...args);
  if (result.state !== 'scored') throw new Error(result.reason.code);
  return result;
}

describe('scoreTake', () => {
  it('weighs measures within a dimension and multiplies dimensions', () => {
    const { scores, leftOut } = scored({
      measures: [exact('a', 1), exact('b', 2), exact('c', 0)],
      lines: [open],
      strokes: 48,
      rubric: small,
    });
    expect(scores.dimensions.map((d) => d.score.score)).toEqual([expect.closeTo((3 * 85 + 60) / 4, 9), 100]);
    expect(scores.overall.score).toBeCloseTo(Math.sqrt(78.75 * 100), 9);
    expect(scores.dimensions[0]!.measures.map((m) => m.id)).toEqual(['b', 'a']);
    expect(leftOut).toEqual([]);
  });

  it('drops what is not measured and says so', () => {
    const { scores, leftOut } = scored({
      measures: [exact('a', 1), refused('b'), exact('c', 2)],
      lines: [open],
      strokes: 48,
      rubric: small,
    });
    expect(scores.dimensions[0]!.score.score).toBeCloseTo(85, 9);
    expect(leftOut).toEqual([
      { code: 'measure-left-out', facts: { dimension: 'one', measure: 'b', state: 'not-measurable' } },
    ]);
  });

  it('gives no score under 24 strokes', () => {
    const result = scoreTake({ measures: [exact('a', 1)], lines: [open], strokes: 23, rubric: small });
    expect(result).toEqual({
      state: 'not-scored',
      reason: { code: 'too-few-strokes-to-score', facts: { strokes: 23, needed: 24 } },
    });
  });

  it('gives no overall score from less than half of the dimensions that apply', () => {
    const three = {
      ...small,
      dimensions: [...small.dimensions, { id: 'three', weight: 1, criteria: [criterion('d')] }],
    };
    const one = { lines: [open], strokes: 48, rubric: three };
    expect(scoreTake({ ...one, measures: [exact('a', 1), refused('c'), refused('d')] }).state).toBe(
      'not-scored',
    );
    const notApplicable: MeasureResult = {
      ...refused('d'),
      outcome: { state: 'not-applicable', reason: { code: 'x', facts: {} } },
    };
    expect(scoreTake({ ...one, measures: [exact('a', 1), refused('c'), notApplicable] }).state).toBe(
      'scored',
    );
    expect(scoreTake({ ...one, measures: [] }).state).toBe('not-scored');
  });

  it('lets the band of the sheet go before the band of the rubric', () => {
    const measures = [exact('accent-to-tap-ratio', 6)];
    const dynamics = { ...steady, dimensions: steady.dimensions.filter((d) => d.id === 'dynamics') };
    const at = (ratioBand: { minDb: number; maxDb: number } | null) =>
      scored({ measures, lines: [{ ratioBand }, { ratioBand }], strokes: 48, rubric: dynamics }).scores
        .overall.score;
    expect(at({ minDb: 5, maxDb: 10 })).toBe(100);
    expect(at(null)).toBeCloseTo(71.01, 2);
    expect(at({ minDb: 9, maxDb: 12 })).toBeCloseTo(60, 9);
  });

  it('scores each line by its own band when the bands differ, weighted by strokes', () => {
    const measures = [
      exact('accent-to-tap-ratio', 9),
      exact('accent-to-tap-ratio', 12, { line: 0 }, 72),
      exact('accent-to-tap-ratio', 6, { line: 1 }, 24),
    ];
    const dynamics = { ...steady, dimensions: steady.dimensions.filter((d) => d.id === 'dynamics') };
    const lines = [{ ratioBand: { minDb: 10, maxDb: 15 } }, open];
    const { scores } = scored({ measures, lines, strokes: 96, rubric: dynamics });
    expect(scores.overall.score).toBeCloseTo(0.75 * 100 + 0.25 * 71.01, 2);
    expect(scores.dimensions[0]!.measures.map((m) => m.scope)).toEqual([{ line: 1 }, { line: 0 }]);
  });

  it('widens a dimension by the intervals of its measures', () => {
    const { measures, sheet } = exampleResult();
    const { scores } = scored({ measures, lines: sheet.lines, strokes: 71, rubric: steady });
    for (const { score } of [...scores.dimensions, { score: scores.overall }]) {
      expect(score.low).toBeLessThanOrEqual(score.score);
      expect(score.high).toBeGreaterThanOrEqual(score.score);
    }
    expect(scores.dimensions.map((d) => d.id)).toEqual(steady.dimensions.map((d) => d.id));
  });
});

import { describe, expect, it } from 'vitest';
import { measures } from '../../../src/core/measures/index.ts';
import { comparedFigures, takeFigure } from '../../../src/core/progress/compared-figures.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { exampleResult } from '../../support/example-result.ts';

describe('the followed figures', () => {
  it.each(comparedFigures)(
    '$id is a measure, and the better side is its own',
    ({ id, better, distance, unit }) => {
      const measure = measures.find((one) => one.id === id)!;
      const sides = { low: 'low', high: 'high', 'near-zero': 'low', 'within-band': 'either' } as const;
      expect(better).toBe(sides[measure.better]);
      expect(unit === 'share' ? 'probability' : unit).toBe(measure.unit);
      if (measure.better === 'near-zero' && measure.unit !== 'dB') expect(distance).toBe(true);
    },
  );

  it('cover every dimension that is scored', () => {
    for (const { id, criteria } of steady.dimensions)
      expect(
        criteria.some(({ measure }) => comparedFigures.some((figure) => measure.startsWith(figure.id))),
        id,
      ).toBe(true);
  });
});

describe('takeFigure', () => {
  const change = comparedFigures.find(({ id }) => id === 'tempo-change')!;
  const withChange = (value: number, low: number, high: number): TakeResult => ({
    ...exampleResult(),
    measures: [
      {
        id: 'tempo-change',
        unit: '%',
        scope: {},
        outcome: { state: 'measured', value, low, high, strokes: 48, pointsAt: [] },
      },
    ],
  });

  it('is the distance from zero of a figure that may lie on either side', () => {
    expect(takeFigure(withChange(-1.2, -2, -0.4), change)).toEqual({
      value: 1.2,
      low: 0.4,
      high: 2,
      strokes: 48,
    });
    expect(takeFigure(withChange(-0.2, -2, 1.6), change)).toMatchObject({ value: 0.2, low: 0, high: 2 });
  });

  it('is null where the take has none', () => {
    expect(takeFigure({ ...exampleResult(), measures: [] }, change)).toBeNull();
  });
});

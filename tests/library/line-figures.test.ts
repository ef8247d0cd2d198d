import { expect, it } from 'vitest';
import { measures } from '../../src/core/measures/index.ts';
import { comparedMeasures, lineFigures } from '../../src/library/line-figures.ts';
import { exampleResult } from '../support/example-result.ts';

const result = exampleResult();

it('keeps what was measured of one line, to six digits', () => {
  expect(lineFigures(result, 0)).toEqual({ 'accent-to-tap-ratio': [9.9, 8.8, 11, 36] });
  expect(lineFigures(result, 1)).toEqual({ 'accent-to-tap-ratio': [8.5, 7.3, 9.7, 35] });
  const fine = exampleResult({
    measures: [
      {
        id: 'timing-spread',
        unit: 'ms',
        scope: { line: 1 },
        outcome: { state: 'measured', value: 6.08585531, low: 0, high: 1e-9, strokes: 9, pointsAt: [] },
      },
    ],
  });
  expect(lineFigures(fine, 1)).toEqual({ 'timing-spread': [6.08586, 0, 1e-9, 9] });
});

it('a take of one line speaks of that line as a whole', () => {
  const alone = exampleResult({ sheet: { title: '', lines: result.sheet.lines.slice(0, 1) } });
  expect(lineFigures(alone, 0)).toMatchObject({
    'timing-spread': [11.6, 9.8, 14.1, 71],
    'accent-to-tap-ratio': [9.2, 8.4, 10, 71],
  });
});

it('names only measures that there are', () => {
  const known = new Set([...measures.map(({ id }) => id), 'hand-ratio-gap']);
  expect(comparedMeasures.filter((id) => !known.has(id))).toEqual([]);
});

import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { model } from '../../src/report/parts/model.ts';
import { exampleResult } from '../support/example-result.ts';

type Played = NonNullable<TakeResult['model']>;

const one = (
  id: string,
  value: number,
  standing: Played['measures'][number]['standing'],
): Played['measures'][number] => ({
  id,
  unit: id === 'model-level' ? 'dB' : '%',
  scope: { line: 0, partial: 2, accent: false },
  outcome: { state: 'measured', value, low: value - 1, high: value + 1, strokes: 20, pointsAt: [] },
  band: 2,
  standing,
});

describe('model', () => {
  it('is empty without a model', () => {
    expect(model(exampleResult())).toBe('');
  });

  it('says for each figure where it lies, and escapes the name', () => {
    const measures = [one('model-placement', 5.2, 'above'), one('model-level', -4, 'below')];
    const played = { name: '<i>Oda</i>', linesLeftOut: 1, measures };
    const html = model(exampleResult({ model: played }));
    expect(html).toContain('later than the model');
    expect(html).toContain('softer than the model');
    expect(html).toContain('5.2');
    expect(html).toContain("1 line of the sheet isn't");
    expect(html).toContain('0 of 2 figures');
    expect(html).not.toContain('<i>');
  });
});

import { describe, expect, it } from 'vitest';
import { modelTable } from '../../src/cli/model-table.ts';
import { textStyles } from '../../src/cli/text-layout.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';

type Model = NonNullable<TakeResult['model']>;
const one = (
  id: string,
  [value, low, high]: readonly [number, number, number],
  standing: Model['measures'][number]['standing'],
  line = 0,
): Model['measures'][number] => ({
  id,
  unit: '%',
  scope: { line, partial: 2, accent: false },
  outcome: { state: 'measured', value, low, high, strokes: 12, pointsAt: [] },
  band: 2.5,
  standing,
});
const shown = (model: Model, width = 80) => modelTable(model, width, textStyles(false)).join('\n');

describe('modelTable', () => {
  it('shows each difference with its range and what it means', () => {
    const text = shown({
      name: 'teacher\u001b[2J.wav',
      linesLeftOut: 1,
      measures: [
        one('model-placement', [5.04, 3.1, 7], 'above'),
        one('model-level', [-4, -6, -2.6], 'below'),
        {
          ...one('model-level', [0, 0, 0], 'not-told', 1),
          outcome: { state: 'not-applicable', reason: { code: 'no-taps', facts: {} } },
        },
      ],
    });
    expect(text).not.toContain('\u001b');
    expect(text).toMatch(/line 1, partial 2 +5\.0 +3\.1 to 7\.0 +later than the model/);
    expect(text).toMatch(/line 1, partial 2 +−4\.0 +−6\.0 to −2\.6 +softer than the model/);
    expect(text).toMatch(/line 2, partial 2 +– doesn't apply here/);
    expect(text).toContain('1 line is not in the model');
  });

  it('says what would tell, where a difference is open', () => {
    const asked = (standing: 'alike' | 'not-told') =>
      shown({ name: 'm', linesLeftOut: 0, measures: [one('model-level', [0, -3, 3], standing)] });
    expect(asked('not-told')).toContain('more repeats in one take');
    expect(asked('alike')).not.toContain('more repeats');
  });

  it('keeps within 80 columns', () => {
    const wide = one('model-placement', [-100.5, -120.5, -100.1], 'below');
    for (const line of shown({ name: 'm'.repeat(200), linesLeftOut: 0, measures: [wide] }).split('\n'))
      expect([...line].length).toBeLessThanOrEqual(80);
  });
});

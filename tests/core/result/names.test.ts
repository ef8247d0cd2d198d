import { describe, expect, it } from 'vitest';
import { measures } from '../../../src/core/measures/index.ts';
import { measureNames } from '../../../src/core/result/measure-names.ts';
import { dimensionName, dimensionNames, measureName } from '../../../src/core/result/names.ts';
import { rubrics } from '../../../src/core/scoring/rubrics/index.ts';
import { exampleResult } from '../../support/example-result.ts';

describe('names', () => {
  it('exist for every measure and every dimension of a rubric', () => {
    const dimensions = rubrics.flatMap((r) => r.dimensions);
    for (const { id, criteria } of dimensions) {
      expect(dimensionNames).toHaveProperty(id);
      for (const { measure } of criteria) expect(measureNames).toHaveProperty([measure]);
    }
    for (const { id } of [...measures, ...exampleResult().measures])
      expect(measureNames).toHaveProperty([id]);
  });

  it('stay short enough for tables', () => {
    for (const { name, brief } of Object.values(measureNames)) {
      expect(name.length).toBeLessThanOrEqual(23);
      expect(brief.length).toBeLessThanOrEqual(26);
    }
  });

  it('spell out an id that has none', () => {
    expect(measureName('colour-of-sound')).toBe('Colour of sound');
    expect(dimensionName('flow')).toBe('Flow');
  });
});

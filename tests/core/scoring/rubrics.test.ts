import { describe, expect, it } from 'vitest';
import { rubrics } from '../../../src/core/scoring/rubrics/index.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';

describe('the rubrics that ship', () => {
  it('have ids of their own and name a source for every criterion', () => {
    expect(new Set(rubrics.map((r) => r.id)).size).toBe(rubrics.length);
    for (const criterion of rubrics.flatMap((r) => r.dimensions.flatMap((d) => d.criteria))) {
      expect(criterion.source.length).toBeGreaterThan(10);
      expect(criterion.secure).toBeGreaterThan(0);
      expect(criterion.nearly).toBeGreaterThan(criterion.secure);
    }
  });

  it('name each measure once', () => {
    for (const rubric of rubrics) {
      const ids = rubric.dimensions.flatMap((d) => d.criteria.map((c) => c.measure));
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it('get stricter from the first to the last', () => {
    const points = rubrics.map((r) => r.dimensions.flatMap((d) => d.criteria.map((c) => c.nearly)));
    points[1]!.forEach((nearly, i) => {
      expect(points[0]![i]).toBeCloseTo(nearly * 1.5, 9);
      expect(points[2]![i]).toBeCloseTo(nearly * 0.6, 9);
    });
    expect(rubrics[1]).toBe(steady);
  });
});

import { describe, expect, it } from 'vitest';
import { holm } from '../../../src/core/stats/holm.ts';

describe('holm', () => {
  it('is the example', () => {
    expect(holm([0.01, 0.04, 0.03]).map((p) => Number(p.toFixed(10)))).toEqual([0.03, 0.06, 0.06]);
  });
  it('never exceeds certainty', () => expect(holm([0.9, 0.8])).toEqual([1, 1]));
  it('of nothing is nothing', () => expect(holm([])).toEqual([]));
});

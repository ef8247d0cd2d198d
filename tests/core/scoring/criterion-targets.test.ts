import { describe, expect, it } from 'vitest';
import { criterionTargets } from '../../../src/core/scoring/criterion-targets.ts';

const ratio = {
  measure: 'accent-to-tap-ratio',
  weight: 1,
  perfect: { min: 8, max: 20 },
  secure: 1,
  nearly: 3,
  source: '',
};
const narrow = { ratioBand: { minDb: 10, maxDb: 14 } };
const open = { ratioBand: null };

describe('criterionTargets', () => {
  it('takes the whole take by the rubric when no line has a band', () => {
    expect(criterionTargets(ratio, [open, open])).toEqual([{ scope: {}, perfect: { min: 8, max: 20 } }]);
  });

  it('takes the whole take by the band that all lines share', () => {
    expect(criterionTargets(ratio, [narrow, narrow])).toEqual([{ scope: {}, perfect: { min: 10, max: 14 } }]);
  });

  it('takes line by line when bands differ', () => {
    expect(criterionTargets(ratio, [narrow, open])).toEqual([
      { scope: { line: 0 }, perfect: { min: 10, max: 14 } },
      { scope: { line: 1 }, perfect: { min: 8, max: 20 } },
    ]);
  });

  it('leaves other measures alone', () => {
    const spread = { ...ratio, measure: 'tap-spread', perfect: 0 };
    expect(criterionTargets(spread, [narrow, open])).toEqual([{ scope: {}, perfect: 0 }]);
  });
});

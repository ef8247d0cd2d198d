import { describe, expect, it } from 'vitest';
import { silencesOf } from '../../../src/core/grading/silences-of.ts';

const click = { times: [1, 1.5, 2, 2.5, 3, 3.5], calibrated: true, uncertaintyMs: 0 };

describe('silencesOf', () => {
  it("goes from the first beat that didn't sound to the next that did", () => {
    const audible = [true, false, false, true, false, true];
    expect(silencesOf({ ...click, audible })).toEqual([
      { from: 1.5, to: 2.5 },
      { from: 3, to: 3.5 },
    ]);
  });

  it('lets a last silence end a beat after its last one', () => {
    expect(silencesOf({ ...click, audible: [true, true, true, true, true, false] })).toEqual([
      { from: 3.5, to: 4 },
    ]);
  });

  it('has none where every click sounded or none was played', () => {
    expect(silencesOf(click)).toEqual([]);
    expect(silencesOf(undefined)).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { silentClickWarnings } from '../../../src/core/grading/silent-click-warnings.ts';

const click = { times: [1, 1.5, 2, 2.5], period: 0.5, levelDb: -20 };
const strokes = Array.from({ length: 24 }, (_, i) => ({ time: 1 + i / 6 }));

describe('silentClickWarnings', () => {
  it('says where a click is heard that stops while the player goes on', () => {
    const [warning] = silentClickWarnings({ ...click, silent: { before: false, after: true } }, strokes);
    // The last click's own beat still has its partials.
    expect(warning).toEqual({ code: 'click-in-part', facts: { from: 1, to: 2.5, alone: 12, strokes: 24 } });
  });

  it('says so of a click that begins late', () => {
    const before = strokes.map(({ time }) => ({ time: time - 3 }));
    const late = silentClickWarnings({ ...click, silent: { before: true, after: false } }, before);
    expect(late.map(({ code }) => code)).toEqual(['click-in-part']);
  });

  it('says nothing of one that may sound on under the strokes, of a short end, and without a click', () => {
    expect(silentClickWarnings(click, strokes)).toEqual([]);
    const silent = { ...click, silent: { before: true, after: true } };
    expect(silentClickWarnings(silent, strokes.slice(0, 16))).toEqual([]);
    expect(silentClickWarnings(null, strokes)).toEqual([]);
  });
});

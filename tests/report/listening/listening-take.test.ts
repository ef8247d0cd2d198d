import { describe, expect, it } from 'vitest';
import { listeningTake } from '../../../src/report/listening/listening-take.ts';
import { deviations, levelsDb, smallTake } from '../../charts/small-take.ts';

describe('listeningTake', () => {
  it('moves each stroke by what it is off, and knows its taps', () => {
    const { strokes } = listeningTake(smallTake(2));
    expect(strokes.moveMs).toEqual([...deviations, ...deviations].map((ms) => 0 - ms));
    expect(strokes.tap).toEqual([false, true, true, false, true, true]);
    expect(strokes.levelDb.slice(0, 3)).toEqual(levelsDb);
  });

  it('takes a stroke without a place along with its neighbours, but none far away', () => {
    const take = smallTake(2);
    const role = take.strokes.role.map((r, i) => (i === 1 ? ('extra' as const) : r));
    const { strokes } = listeningTake({ ...take, strokes: { ...take.strokes, role } });
    // Between 0 at 1 s and −4 ms at 1.404 s, at 1.194 s.
    expect(strokes.moveMs[1]).toBeCloseTo((-4 * 0.194) / 0.404, 9);
    const far = take.strokes.time.map((t, i) => (i > 2 ? t + 5 : t));
    const alone = { ...take.strokes, time: far, deviationMs: [0, -6, 4, null, null, null] };
    expect(listeningTake({ ...take, strokes: alone }).strokes.moveMs.slice(3)).toEqual([0, 0, 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { evenRow } from '../../../src/core/onsets/even-row.ts';

const row = (times: readonly number[]) => times.map((time) => ({ time }));
const even = (count: number, interval: number, from = 0) =>
  Array.from({ length: count }, (_, i) => from + i * interval);
const share = (flags: readonly boolean[]) => flags.filter(Boolean).length / flags.length;

describe('evenRow', () => {
  it('has every attack between sure strokes, and none that is the first or the last', () => {
    const times = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6];
    const flags = evenRow(row(times), [0, 0.3, 0.6]);
    expect(flags[1]).toBe(true);
    expect(flags).toEqual([false, true, true, true, true, true, false]);
  });

  it.each([0.07, 0.15, 0.25, 0.5])('knows a player who scatters by a twentieth of %f s', (interval) => {
    const random = seeded(3);
    const times = even(60, interval).map((time) => time + random.normal(0, interval / 20));
    const sure = times.filter((_, i) => i % 3 === 0);
    // Slower than five attacks in two seconds is no row that could be known.
    const known = share(evenRow(row(times), sure));
    if (interval < 0.4) expect(known).toBeGreaterThan(0.9);
    expect(known).toBeLessThan(1);
  });

  it('has next to none of attacks by chance, as many a second as strokes', () => {
    const known = [1, 2, 3, 4].map((seed) => {
      const random = seeded(seed);
      const times = [0];
      for (let i = 0; i < 300; i++) times.push(times.at(-1)! - 0.15 * Math.log(1 - random.uniform()));
      return share(
        evenRow(
          row(times),
          times.filter((_, i) => i % 3 === 0),
        ),
      );
    });
    expect(Math.max(...known)).toBeLessThan(0.01);
  });

  it('has none where no sure stroke is near, or on one side only', () => {
    const times = even(30, 0.2);
    expect(evenRow(row(times), [])).toEqual(times.map(() => false));
    expect(share(evenRow(row(times), even(15, 0.2)))).toBeLessThan(0.7);
    expect(evenRow(row(times), [times[0]!])).not.toContain(true);
  });

  it('has none of too few in a slow row', () => {
    expect(evenRow(row(even(10, 0.6)), even(10, 0.6))).not.toContain(true);
  });

  it('does with nothing, one and two', () => {
    expect(evenRow([], [])).toEqual([]);
    expect(evenRow(row([1]), [1])).toEqual([false]);
    expect(evenRow(row([1, 2]), [1, 2])).toEqual([false, false]);
  });
});

import { describe, expect, it } from 'vitest';
import { findBell } from '../../../src/core/click/bell.ts';
import { soundLead } from '../../../src/core/click/click-seed.ts';

const common = Float32Array.of(1);
const bell = Float32Array.of(2);
const covered = Float32Array.of(0);

/**
 * A metronome in signs: what is heard of each click. `c` the click alone, `d` the click though it couldn't be told
 * surely, `b` the bell, `x` covered by a stroke, and a stroke without an attack of its own `-`.
 */
function listen(clicks: string, firstNumber = 0) {
  const sign = (k: number) => clicks[k - firstNumber] ?? '-';
  const timeOf = (k: number) => 10 + 0.5 * k;
  const numbers = [...clicks].map((_, i) => firstNumber + i);
  const soundAt = (k: number) => (sign(k) === 'b' ? bell : 'cd'.includes(sign(k)) ? common : covered);
  return findBell({
    timeOf,
    common,
    heard: numbers.filter((k) => sign(k) === 'c').map((k) => ({ k })),
    attacks: numbers
      .filter((k) => sign(k) !== '-')
      .map((k) => ({ time: timeOf(k) + soundLead, levelDb: -20 })),
    learn: (places) => soundAt(places[0]!),
    isThere: (k, sound) => sound !== covered && soundAt(k) === sound,
  });
}

describe('findBell', () => {
  it.each([2, 3, 4, 5, 6, 7, 8])('finds a bell on every %i clicks', (cycle) => {
    const clicks = Array.from({ length: 33 }, (_, k) => (k % cycle === 0 ? 'b' : 'c'))
      .join('')
      .slice(0, -1);
    const found = listen(`c${clicks.slice(1)}`.replace(/^c/, 'b'))!;
    expect(found.sound).toBe(bell);
    expect([...Array(32).keys()].filter((k) => found.has(k))).toEqual(
      [...Array(32).keys()].filter((k) => k % cycle === 0),
    );
  });

  it('finds it where strokes cover most clicks and most bells', () => {
    const found = listen('xccxbxxcxxxxbxcxxxxxxcxxbxxcxc')!;
    expect(found.votes).toEqual([4, 12, 24]);
    expect([0, 4, 8, 16, 24, 28].every((k) => found.has(k))).toBe(true);
    expect([1, 2, 3, 5, 14].some((k) => found.has(k))).toBe(false);
  });

  it('takes one sound a click ahead of a count-in for a bell of its own', () => {
    const found = listen('bccccccc', -1)!;
    expect(found.first).toBe(-1);
    expect([-1, 0, 1, 3, 7].map((k) => found.has(k))).toEqual([true, false, false, false, false]);
  });

  it.each([
    ['clicks all alike', 'cccccccccccc'],
    ['strokes on some clicks', 'ccxccxxcccxcc'],
    ['clicks with a stroke close behind them', 'ccccdccccccdccccccdcc'],
    ['a single other sound', 'ccccbccccc'],
    ['sounds in no cycle', 'ccbcbbccccbcbcccccbbcc'],
  ])('finds none among %s', (_, clicks) => {
    expect(listen(clicks)).toBeNull();
  });
});

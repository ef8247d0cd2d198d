import { describe, expect, it } from 'vitest';
import { rowEnds } from '../../../src/core/onsets/row-end.ts';

const row = (times: readonly number[]) =>
  times.map((time, i) => ({ time, levelDb: i % 3 === 0 ? -10 : -25 }));
const even = (count: number, interval: number) => Array.from({ length: count }, (_, i) => i * interval);
const sureUpTo = (last: number) => (i: number) => i <= last;
const places = (flags: readonly boolean[]) => flags.flatMap((is, i) => (is ? [i] : []));

describe('rowEnds', () => {
  it('has the taps after the last sure stroke of a row, at its own interval', () => {
    expect(places(rowEnds(row(even(8, 0.2)), sureUpTo(6)))).toEqual([7]);
    expect(places(rowEnds(row(even(12, 0.2)), sureUpTo(9)))).toEqual([10, 11]);
  });

  it('has three at the most', () => {
    expect(places(rowEnds(row(even(20, 0.2)), sureUpTo(9)))).toEqual([10, 11, 12]);
  });

  it('has none that comes after another interval, such as talk or sticks laid down', () => {
    for (const interval of [0.05, 0.13, 0.27, 0.6]) {
      const times = [...even(10, 0.2), 1.8 + interval, 1.8 + interval + 0.2];
      expect(places(rowEnds(row(times), sureUpTo(9)))).toEqual([]);
    }
  });

  it('has none where the row goes on, where it began, or where there was no even row', () => {
    expect(places(rowEnds(row(even(12, 0.2)), (i) => i !== 8))).toEqual([]);
    expect(places(rowEnds(row(even(12, 0.2)), (i) => i > 2))).toEqual([]);
    const uneven = [0, 0.1, 0.5, 0.55, 0.9, 1.3, 1.35, 1.55, 1.75];
    expect(places(rowEnds(row(uneven), sureUpTo(7)))).toEqual([]);
    expect(rowEnds([], () => true)).toEqual([]);
    expect(places(rowEnds(row(even(5, 0.2)), sureUpTo(3)))).toEqual([]);
  });

  it('has none far under the row, such as what is left of a click', () => {
    const faint = row(even(9, 0.2)).map((attack, i) => (i < 7 ? attack : { ...attack, levelDb: -38 }));
    expect(places(rowEnds(faint, sureUpTo(6)))).toEqual([]);
    const soft = faint.map((attack, i) => (i < 7 ? attack : { ...attack, levelDb: -36 }));
    expect(places(rowEnds(soft, sureUpTo(6)))).toEqual([7, 8]);
  });

  it('ends every line of a take', () => {
    const line = [...even(9, 0.2)];
    const times = [...line, ...line.map((time) => time + 6)];
    expect(places(rowEnds(row(times), (i) => i % 9 < 7))).toEqual([7, 8, 16, 17]);
  });
});

import { describe, expect, it } from 'vitest';
import { risingLines } from '../../../../src/core/scoring/breaking/rising-lines.ts';

const lines = (...written: readonly (readonly [string, number | null])[]) =>
  written.map(([notation, bpm]) => ({ notation, bpm }));

describe('risingLines', () => {
  it('finds an exercise at four rising tempos or more, also between others', () => {
    expect(risingLines(lines(['a', 80], ['a', 90], ['a', 100], ['a', 110]))).toEqual([[0, 1, 2, 3]]);
    expect(risingLines(lines(['a', 80], ['b', 60], ['a', 90], ['a', 100], ['a', 110]))).toEqual([
      [0, 2, 3, 4],
    ]);
  });

  it('finds nothing with fewer, with a tempo that falls or stays, or with an open one', () => {
    expect(risingLines(lines(['a', 80], ['a', 90], ['a', 100]))).toEqual([]);
    expect(risingLines(lines(['a', 80], ['a', 90], ['a', 90], ['a', 110]))).toEqual([]);
    expect(risingLines(lines(['a', 80], ['a', 90], ['a', null], ['a', 110]))).toEqual([]);
  });
});

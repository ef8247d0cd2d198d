import { describe, expect, it } from 'vitest';
import { fromBefore } from '../../../src/report/listening/from-before.ts';
import { listeningTake } from '../../../src/report/listening/listening-take.ts';
import { beatAt, beatWords, roundSpan } from '../../../src/report/listening/round-span.ts';
import { smallTake } from '../../charts/small-take.ts';

const take = listeningTake(smallTake(6));

describe('beatAt', () => {
  it('finds the beat of a moment, also of a first stroke that comes early', () => {
    expect([0, 1, 1.3, 1.59, 1.6, 99].map((time) => beatAt(take, time))).toEqual([0, 0, 0, 1, 1, 5]);
    expect(beatAt(listeningTake({ ...smallTake(1), segments: [] }), 1)).toBeNull();
  });
});

describe('roundSpan', () => {
  it('goes from even beat to even beat, or from end to end of the time through the line', () => {
    const beat = roundSpan(take, 1, 'beat');
    expect([beat.from, beat.to]).toEqual([expect.closeTo(1.6, 9), expect.closeTo(2.2, 9)]);
    const line = roundSpan(take, 1, 'line');
    expect([line.from, line.to]).toEqual([expect.closeTo(1, 9), expect.closeTo(4.6, 9)]);
  });
});

describe('beatWords', () => {
  it('names a beat', () => expect(beatWords(take, 2)).toBe('time 1, beat 3'));
});

describe('fromBefore', () => {
  it('begins with the beat of a moment, or a second before', () => {
    expect(fromBefore(take, 1.9)).toBeCloseTo(1.6, 9);
    expect(fromBefore(take, 0.5)).toBe(0);
  });
});

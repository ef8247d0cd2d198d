import { describe, expect, it } from 'vitest';
import { tempoColumns } from '../../../src/core/grading/tempo-columns.ts';
import { machineTake } from './machine-take.ts';

describe('tempoColumns', () => {
  it('gives the local tempo of every run, never across two', () => {
    const { time, bpm, segment } = tempoColumns(machineTake([60, 66]).performance);
    expect(time).toHaveLength(96);
    expect([bpm.length, segment.length]).toEqual([96, 96]);
    bpm.forEach((tempo, i) => {
      expect(tempo).toBeCloseTo(segment[i] === 0 ? 60 : 66, 6);
    });
  });

  it('is empty where there are too few strokes for a tempo', () => {
    expect(tempoColumns({ ...machineTake([60, 60]).performance, timing: null })).toEqual({
      time: [],
      bpm: [],
      segment: [],
    });
  });
});

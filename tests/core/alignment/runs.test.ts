import { describe, expect, it } from 'vitest';
import type { PathStep } from '../../../src/core/alignment/find-path.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { cutRuns } from '../../../src/core/alignment/runs.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 2 }), line('R>LR L>RL R>LR L>RL', { bpm: 90 }));
const main = mainSlots(layOut(sheet), sheet);
const through = (from: number, to: number, kind: PathStep['kind'], stroke = from): PathStep[] =>
  Array.from({ length: to - from + 1 }, (_, i) => ({
    stroke: stroke + i,
    main: from + i,
    kind: i === 0 ? kind : 'next',
  }));
const spans = (path: readonly PathStep[]) =>
  cutRuns(path, main).map(({ kind, first, last }) => [kind, first, last]);

describe('cutRuns', () => {
  it('cuts where another tempo is asked', () => {
    expect(spans(through(0, 35, 'begin'))).toEqual([
      ['begin', 0, 23],
      ['next', 24, 35],
    ]);
  });

  it('goes on into a line of the same tempo', () => {
    const alike = sheetOf(line('RLRL'), line('LRLR'), line('RLRL', { bpm: 90 }));
    expect(cutRuns(through(0, 11, 'begin'), mainSlots(layOut(alike), alike)).map(({ last }) => last)).toEqual(
      [7, 11],
    );
  });

  it('counts what is missed at the end of a line where it is less than a beat', () => {
    const even = sheetOf(line('RLRL RLRL'), line('RLRLRLRLRLRL RL', { bpm: 90 }));
    const lasts = (from: number, to: number) =>
      cutRuns(through(from, to, 'begin'), mainSlots(layOut(even), even)).map(({ last }) => last);
    expect(lasts(0, 4)).toEqual([7]);
    expect(lasts(0, 3)).toEqual([3]);
    expect(lasts(8, 20)).toEqual([21]);
    expect(lasts(8, 9)).toEqual([9]);
  });

  it('counts slots missed at the beginning of a bar and at the end of a line', () => {
    expect(spans(through(1, 22, 'begin'))).toEqual([['begin', 0, 23]]);
    expect(spans(through(0, 18, 'begin'))).toEqual([['begin', 0, 18]]);
  });

  it('gives the partial left out by a slip to the run before', () => {
    expect(spans([...through(0, 9, 'begin'), ...through(11, 23, 'slip', 10)])).toEqual([
      ['begin', 0, 10],
      ['slip', 11, 23],
    ]);
  });

  it('makes nothing of nothing', () => {
    expect(spans([])).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { gradeRuns } from '../../../src/core/alignment/grade-runs.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import type { StepKind } from '../../../src/core/alignment/paths.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('>RLR >LRL', { repeats: 8 }), line('R>LR L>RL', { repeats: 8 }));
const main = mainSlots(layOut(sheet), sheet);
const run = (kind: StepKind, first: number, last: number) => ({ kind, first, last, steps: [] });
const graded = (...runs: readonly ReturnType<typeof run>[]) =>
  gradeRuns(runs, main).map(({ run: of, first, last, state }) => `${of}: ${first}-${last} ${state}`);

describe('gradeRuns', () => {
  it('grades one run through', () => {
    expect(graded(run('begin', 0, 95))).toEqual(['0: 0-95 graded']);
  });

  it('gives up what was begun again from the start', () => {
    expect(graded(run('begin', 0, 30), run('begin', 0, 95))).toEqual(['0: 0-30 abandoned', '1: 0-95 graded']);
  });

  it('keeps what came before the bar begun again', () => {
    expect(graded(run('begin', 0, 30), run('begin', 24, 95))).toEqual([
      '0: 0-23 graded',
      '0: 24-30 abandoned',
      '1: 24-95 graded',
    ]);
  });

  it('keeps a whole playing when a later one breaks off', () => {
    expect(graded(run('begin', 0, 95), run('begin', 0, 20))).toEqual(['0: 0-95 graded', '1: 0-20 abandoned']);
  });

  it('grades the later of two whole playings of a line', () => {
    expect(graded(run('begin', 0, 95), run('begin', 0, 47))).toEqual([
      '0: 0-47 abandoned',
      '0: 48-95 graded',
      '1: 0-47 graded',
    ]);
  });

  it('takes slips and pauses for one attempt, repeats on top for surplus', () => {
    expect(
      graded(run('begin', 0, 10), run('slip', 11, 47), run('surplus', 42, 47), run('pause', 48, 95)),
    ).toEqual(['0: 0-10 graded', '1: 11-47 graded', '2: 42-47 surplus', '3: 48-95 graded']);
  });

  it('grades a beginning tried fifty thousand times, in a time that grows with the runs and not their square', () => {
    const many = Array.from({ length: 50_000 }, (_, i) => run('begin', 0, 6 + (i % 5)));
    const began = performance.now();
    const pieces = gradeRuns(many, main);
    expect(performance.now() - began).toBeLessThan(3000);
    expect(pieces.filter(({ state }) => state === 'graded')).toEqual([
      { run: many.length - 1, first: 0, last: 10, state: 'graded' },
    ]);
  });

  it('parts a surplus repeat from what follows it', () => {
    expect(graded(run('begin', 0, 47), run('surplus', 42, 95))).toEqual([
      '0: 0-47 graded',
      '1: 42-47 surplus',
      '1: 48-95 graded',
    ]);
  });
});

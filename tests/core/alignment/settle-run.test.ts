import { describe, expect, it } from 'vitest';
import { levelEvidence } from '../../../src/core/alignment/level-evidence.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { ownStrays } from '../../../src/core/alignment/prices.ts';
import { settleRun } from '../../../src/core/alignment/settle-run.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 2, bpm: 100 }));
const main = mainSlots(layOut(sheet), sheet);
const model = { accentDb: -16, tapDb: -30, accentSpreadDb: 2, tapSpreadDb: 2, accentShare: 1 / 3 };
const even = Array.from({ length: main.length }, (_, i) => 1 + 0.2 * i);

/** Settles strokes from a first guess that lays the i-th stroke on the i-th slot up to `guessed`. */
const settle = (
  times: readonly number[],
  levels: readonly number[],
  pairs: readonly (readonly [number, number])[],
) =>
  Array.from(
    settleRun({
      run: {
        kind: 'begin',
        first: 0,
        last: main.length - 1,
        steps: pairs.map(([stroke, slot]) => ({ stroke, main: slot, kind: 'next' as const })),
      },
      main,
      times: Float64Array.from(times),
      levels: levelEvidence(levels, model),
      scatter: 0.06,
      stray: ownStrays,
      from: 0,
      to: times.length,
    }),
  );
const levelsOf = Array.from(main.accent, (accent) => (accent === 1 ? -16 : -30));
const straight = even.map((_, i) => [i, i] as const);

describe('settleRun', () => {
  it('keeps a right guess', () => {
    expect(settle(even, levelsOf, straight)).toEqual(even.map((_, i) => i));
  });

  it('mends a stroke laid on its neighbour', () => {
    const guess = straight.map(([stroke, slot]) =>
      slot === 10 ? ([11, 10] as const) : ([stroke, slot] as const),
    );
    const wrong = guess.filter(([, slot]) => slot !== 11);
    expect(settle(even, levelsOf, wrong)).toEqual(even.map((_, i) => i));
  });

  it('leaves a slot missed rather than take a stroke more than half its space away', () => {
    const times = even.map((time, i) => (i === 10 ? time + 0.13 : time));
    const settled = settle(
      times,
      levelsOf,
      straight.filter(([, slot]) => slot !== 10),
    );
    expect(settled[10]).toBe(-1);
    expect(settled[11]).toBe(11);
  });

  it('takes the stroke, not its bounce', () => {
    const times = [...even.slice(0, 10), even[9]! + 0.03, ...even.slice(10)];
    const levels = [...levelsOf.slice(0, 10), -38, ...levelsOf.slice(10)];
    const settled = settle(
      times,
      levels,
      straight.map(([, slot]) => [slot < 9 ? slot : slot + 1, slot] as const),
    );
    expect(settled[9]).toBe(9);
    expect(settled[10]).toBe(11);
  });
});

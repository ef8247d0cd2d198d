import { expect, it } from 'vitest';
import { tellAlike } from '../../../src/core/session/tell-alike.ts';
import { line, sheetOf } from '../alignment/made-sheet.ts';

const sheet = sheetOf(
  line('>RLR >LRL', { bpm: 110 }),
  line('>RRL >RRL', { bpm: 90 }),
  line('R>LR L>RL', { bpm: 90 }),
  line('>RLL >RLL', { bpm: 110 }),
);
const played = (at: number, bpm: number) => ({ line: at, repeats: 2, bpm, from: 0, to: 9 });
const told = (...found: ReturnType<typeof played>[]) => tellAlike(sheet, found).map((one) => one.line);

it('tells lines that sound alike by their tempo', () => {
  expect(told(played(0, 91))).toEqual([1]);
  expect(told(played(1, 108))).toEqual([0]);
});

it('takes them in the order of the sheet where the tempo is the same', () => {
  expect(told(played(0, 110), played(0, 110), played(0, 110))).toEqual([0, 3, 0]);
});

it('leaves a line alone that sounds like no other', () => {
  expect(told(played(2, 110))).toEqual([2]);
});

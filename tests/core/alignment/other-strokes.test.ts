import { describe, expect, it } from 'vitest';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { otherStrokes } from '../../../src/core/alignment/other-strokes.ts';
import type { StepKind } from '../../../src/core/alignment/paths.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('>RLR >llLRL', { bpm: 100 }));
const main = mainSlots(layOut(sheet), sheet);
const run = (kind: StepKind, first: number, last: number) => ({ kind, first, last, steps: [] });
const sort = (times: readonly number[], strokes: readonly number[], cut?: StepKind) =>
  otherStrokes({
    runs: cut ? [run('begin', 0, 2), run(cut, 3, 5)] : [run('begin', 0, 5)],
    settled: cut
      ? [Int32Array.from(strokes.slice(0, 3)), Int32Array.from(strokes.slice(3))]
      : [Int32Array.from(strokes)],
    main,
    times: Float64Array.from(times),
  });

describe('otherStrokes', () => {
  it('takes up to the written grace notes before their stroke', () => {
    const { gracesOf, extra, doubled } = sort(
      [1, 1.2, 1.4, 1.5, 1.54, 1.57, 1.6, 1.8, 2],
      [0, 1, 2, 6, 7, 8],
    );
    expect([...gracesOf]).toEqual([[6, [4, 5]]]);
    expect({ extra, doubled }).toEqual({ extra: [3], doubled: [] });
  });

  it('tells doubles from extras by how close they follow', () => {
    const { extra, doubled, outside } = sort(
      [0.5, 1, 1.03, 1.2, 1.3, 1.4, 1.6, 1.8, 2, 3],
      [1, 3, 5, 6, 7, 8],
    );
    expect({ extra, doubled, outside }).toEqual({ extra: [4], doubled: [2], outside: [0, 9] });
  });

  it('counts strokes between two runs as extra where the playing goes on, as outside where it was left', () => {
    const times = [1, 1.2, 1.4, 1.55, 1.8, 2, 2.2];
    const strokes = [0, 1, 2, 4, 5, 6];
    expect(sort(times, strokes, 'slip').extra).toEqual([3]);
    expect(sort(times, strokes, 'begin').outside).toEqual([3]);
  });
});

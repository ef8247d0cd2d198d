import { describe, expect, it } from 'vitest';
import { segmentList } from '../../../src/core/grading/segment-list.ts';
import { madeTake } from './made-take.ts';

const { alignment, strokes } = madeTake();

describe('segmentList', () => {
  it("gives each run its state, its strokes' first and last time and its tempo", () => {
    const list = segmentList(alignment, strokes);
    expect(list.map(({ firstSlot, lastSlot, state }) => [firstSlot, lastSlot, state])).toEqual([
      [0, 3, 'abandoned'],
      [0, 11, 'graded'],
      [6, 11, 'surplus'],
    ]);
    expect(list.map(({ from }) => from)).toEqual([1, 5, 10]);
    const last = [1 + 3 / 3, 5 + 11 / 3, 10 + 5 / 3];
    list.forEach(({ to, bpm }, i) => {
      expect(to).toBeCloseTo(last[i]!, 12);
      expect(bpm).toBeCloseTo(60, 12);
    });
  });

  it("takes the run's own start where no stroke lies in it", () => {
    const [segment] = segmentList({ ...alignment, matches: [] }, strokes);
    expect([segment!.from, segment!.to]).toEqual([1, 1]);
  });
});

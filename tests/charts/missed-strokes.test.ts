import { expect, it } from 'vitest';
import { missedStrokes } from '../../src/charts/missed-strokes.ts';
import { smallTake } from './small-take.ts';

it('stands a missed stroke between its neighbours, in the same proportion as written', () => {
  const take = smallTake(4);
  const gone = [6, 7];
  const slots = {
    ...take.slots,
    stroke: take.slots.stroke.map((stroke, i) => (gone.includes(i) ? null : stroke)),
    state: take.slots.state.map((state, i) => (gone.includes(i) ? ('missed' as const) : state)),
  };
  const found = missedStrokes({ ...take, slots });
  const [before, after] = [take.strokes.time[5]!, take.strokes.time[8]!];
  expect(found.map(({ slot }) => slot)).toEqual(gone);
  expect(found[0]!.time).toBeCloseTo(before + (after - before) / 3, 9);
  expect(found[1]!.time).toBeCloseTo(before + (2 * (after - before)) / 3, 9);
});

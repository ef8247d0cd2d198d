import { describe, expect, it } from 'vitest';
import { evenBeats } from '../../../src/report/listening/even-beats.ts';
import { smallTake } from '../../charts/small-take.ts';

// In the small take a beat lasts 0.6 s and its first stroke stands on the even place, from 1 s on.
describe('evenBeats', () => {
  it('puts each beat where its even place is, and bars at their first beats', () => {
    const { beats, goes } = evenBeats(smallTake(6));
    expect(goes).toEqual(['time 1']);
    expect(beats.map(({ from }) => from)).toEqual(
      [0, 1, 2, 3, 4, 5].map((beat) => expect.closeTo(1 + 0.6 * beat, 9)),
    );
    expect(beats.map(({ to }) => to)).toEqual(
      [1, 2, 3, 4, 5, 6].map((beat) => expect.closeTo(1 + 0.6 * beat, 9)),
    );
    expect(beats.map(({ beginsBar }) => beginsBar)).toEqual([true, false, false, false, true, false]);
  });

  it('finds the place of a beat whose first stroke is missed between its neighbours', () => {
    const take = smallTake(3);
    const slots = { ...take.slots, stroke: take.slots.stroke.map((s, slot) => (slot === 3 ? null : s)) };
    expect(evenBeats({ ...take, slots }).beats[1]!.from).toBeCloseTo(1.6, 9);
  });

  it('has none where no run is graded', () => {
    const take = smallTake(3);
    expect(evenBeats({ ...take, segments: [] })).toEqual({ beats: [], goes: [] });
    const segments = take.segments.map((segment) => ({ ...segment, state: 'abandoned' as const }));
    expect(evenBeats({ ...take, segments }).beats).toEqual([]);
  });

  it('tells the times through a line apart', () => {
    const take = smallTake(4);
    const second = take.slots.beat.map((beat) => beat >= 2);
    const slots = {
      ...take.slots,
      repeat: second.map(Number),
      beat: take.slots.beat.map((beat) => beat % 2),
      bar: second.map(() => 0),
    };
    const { beats, goes } = evenBeats({ ...take, slots });
    expect(goes).toEqual(['time 1', 'time 2']);
    expect(beats.map(({ go }) => go)).toEqual([0, 0, 1, 1]);
    expect(beats[1]!.to).toBeCloseTo(beats[2]!.from, 9);
    expect(beats.map(({ beginsBar }) => beginsBar)).toEqual([true, false, true, false]);
  });
});

import { expect, it } from 'vitest';
import { plainLook } from '../../src/charts/look.ts';
import { wanderCurve } from '../../src/charts/wander-curve.ts';
import { smallTake } from './small-take.ts';

/** The points of the curve, gaps left out. */
function curve(take: ReturnType<typeof smallTake>) {
  const { datasets } = wanderCurve.draw(take, plainLook)!.data;
  return (datasets[0]!.data as { x: number; y: number }[]).filter((point) => !Number.isNaN(point.y));
}

it('is level where the tempo is steady, whatever single strokes do', () => {
  for (const { y } of curve(smallTake(24))) expect(Math.abs(y)).toBeLessThan(1e-6);
});

it('follows a slow wave of 20 ms that is laid on the beat', () => {
  const take = smallTake(40);
  // Whole waves, so that the straight line through them stays almost level.
  const wave = take.slots.position.map((beat) => 0.02 * Math.cos((2 * Math.PI * beat * 2) / 40));
  const time = take.strokes.time.map((at, i) => at + wave[i]!);
  const points = curve({ ...take, strokes: { ...take.strokes, time } });
  points.forEach(({ y }, i) => {
    expect(Math.abs(y - 1000 * wave[i]!)).toBeLessThan(1);
  });
});

it('is left out of a take of a few beats', () => {
  expect(wanderCurve.draw(smallTake(8), plainLook)).toBeNull();
});

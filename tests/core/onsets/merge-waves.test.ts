import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { mergeWaves } from '../../../src/core/onsets/merge-waves.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';

const stroke = (time: number, levelDb: number): Stroke => ({
  time,
  timeSe: 1e-5,
  levelDb,
  levelSe: 0.1,
  sound: 'pad',
  evidence: 100,
  timbre: null,
});

/** Twenty strokes 160 ms apart, each followed by another attack at a lag and a step of level. */
function followed(lag: (k: number) => number, stepDb: (k: number) => number): Stroke[] {
  return Array.from({ length: 20 }, (_, k) => [
    stroke(k * 0.16, k % 3 === 0 ? -10 : -26),
    stroke(k * 0.16 + lag(k), (k % 3 === 0 ? -10 : -26) + stepDb(k)),
  ]).flat();
}

describe('mergeWaves', () => {
  it('drops a second wave that comes again and again at one lag and step, louder or softer', () => {
    const random = seeded(3);
    for (const stepDb of [-14, 4]) {
      const strokes = followed(
        () => 0.011 + random.normal(0, 0.0003),
        () => stepDb + random.normal(0, 1),
      );
      expect(mergeWaves(strokes).map(({ time }) => time)).toEqual(
        Array.from({ length: 20 }, (_, k) => k * 0.16),
      );
    }
  });

  it('keeps grace notes, whose lag scatters as a hand does', () => {
    const random = seeded(4);
    const strokes = followed(
      () => random.between(0.022, 0.034),
      () => 12 + random.normal(0, 2),
    );
    expect(mergeWaves(strokes).length).toBeGreaterThanOrEqual(strokes.length - 2);
  });

  it('keeps a fast roll and a single bounce', () => {
    const random = seeded(5);
    const roll = Array.from({ length: 40 }, (_, k) => stroke(k * 0.06 + random.normal(0, 0.003), -20));
    expect(mergeWaves(roll)).toEqual(roll);
    const bounce = [stroke(0, -10), stroke(0.03, -20), stroke(0.2, -25)];
    expect(mergeWaves(bounce)).toEqual(bounce);
  });
});

import { describe, expect, it } from 'vitest';
import { linePattern } from '../../../src/core/grading/line-pattern.ts';
import { machine } from '../measures/simulated-performance.ts';
import { simulatedResult } from './simulated-result.ts';

const lateMs = [3, -9, 6];
const level = (slot: { accent: boolean; partial: number }) =>
  slot.accent ? -12 : slot.partial === 2 ? -25 : -27;
const take = simulatedResult({
  sheet: 'tempo: 100\n>RLR >LRL ; times: 8\n>RL >LR ; times: 8',
  seed: 1,
  player: machine,
  habit: (slot) => (slot.divisions === 3 ? lateMs[slot.partial - 1]! / 1000 : 0),
  level,
  levelSd: () => 0,
  timeSe: 0,
  levelSe: 0,
});

describe('linePattern', () => {
  it('holds every written stroke of the line in order, with all its repeats', () => {
    const { notation, strokes } = linePattern(take, 0);
    expect(notation).toBe('>RLR >LRL');
    expect(strokes.map(({ beat, partial, accent }) => [beat, partial, accent])).toEqual(
      [0, 1].flatMap((beat) => [1, 2, 3].map((partial) => [beat, partial, partial === 1])),
    );
    expect(
      strokes.every(({ placement, level }) => placement!.strokes.length + level!.strokes.length === 16),
    ).toBe(true);
  });

  it('has a machine with habits play them without scatter', () => {
    const { strokes, placementScatter, tapScatter, accentScatter } = linePattern(take, 0);
    // A partial at 100 BPM lasts 200 ms.
    for (const { partial, placement } of strokes)
      expect(placement!.mean).toBeCloseTo(lateMs[partial - 1]! / 2, 1);
    for (const scatter of [placementScatter, tapScatter, accentScatter]) expect(scatter.sd).toBeLessThan(0.1);
    expect(placementScatter.degrees).toBeGreaterThanOrEqual(36);
  });

  it('tells levels against the median tap, half of the taps on either side of it', () => {
    const levels = linePattern(take, 0)
      .strokes.slice(0, 3)
      .map((stroke) => stroke.level!.mean);
    expect(levels[0]).toBeCloseTo(14, 6);
    expect(levels[1]! - levels[2]!).toBeCloseTo(2, 6);
  });

  it('leaves one slip out of the habits', () => {
    const slipped = { ...take, strokes: { ...take.strokes, levelDb: take.strokes.levelDb.with(7, -60) } };
    const habitOf = (result: typeof take) => linePattern(result, 0).strokes[1]!.level!;
    expect(take.slots.stroke[7]).toBe(7);
    expect(habitOf(slipped).strokes).toEqual(habitOf(take).strokes.filter((stroke) => stroke !== 7));
    expect(habitOf(slipped).mean).toBeCloseTo(habitOf(take).mean, 0);
  });
});

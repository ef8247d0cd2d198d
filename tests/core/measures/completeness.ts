import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import type { Measure } from '../../../src/core/measures/measure.ts';
import type { Performance } from '../../../src/core/measures/performance.ts';
import { performanceOf } from '../../../src/core/measures/performance.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';
import { wilsonInterval } from '../../../src/core/stats/wilson-interval.ts';
import { figureOf, outcomeOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

interface Faults {
  readonly missed?: readonly number[];
  readonly extraAfter?: readonly number[];
  readonly doubledAfter?: readonly number[];
}

/** A faultless take of 96 strokes in which chosen slots are missed and strokes follow others by so many seconds. */
export function takeWithFaults(faults: Faults): Performance {
  const { missed = [], extraAfter = [], doubledAfter = [] } = faults;
  const clean = simulatedPerformance({ sheet: 'tempo: 100\n>RLR >LRL; x16', seed: 1, player: machine });
  const strokes: Stroke[] = [];
  const matches: { slot: number; stroke: number; segment: number }[] = [];
  const extra: number[] = [];
  const doubled: number[] = [];
  const sound = (time: number) => {
    const stroke = {
      time,
      timeSe: 0.0001,
      levelDb: -30,
      levelSe: 0.1,
      sound: 'pad',
      evidence: 40,
      timbre: null,
    } as const;
    strokes.push(stroke);
    return strokes.length - 1;
  };
  for (const { slot, time } of clean.strokes) {
    if (!missed.includes(slot.index)) matches.push({ slot: slot.index, stroke: sound(time), segment: 0 });
    if (doubledAfter.includes(slot.index)) doubled.push(sound(time + 0.03));
    if (extraAfter.includes(slot.index)) extra.push(sound(time + 0.1));
  }
  const alignment: Alignment = { ...clean.alignment, matches, missed, extra, doubled };
  return performanceOf({ sheet: clean.sheet, slots: clean.slots, strokes, alignment });
}

/** What holds for a measure that counts faults among 96 strokes: two of them, none, and a take too short for it. */
export function describeCompleteness(measure: Measure, two: Faults, pointsAt: readonly number[]): void {
  describe(measure.id, () => {
    it('is two of 96, and shows where', () => {
      const figure = figureOf(measure, takeWithFaults(two));
      expect(figure.value).toBeCloseTo(200 / 96, 10);
      expect(figure.strokes).toBe(96);
      expect(figure.pointsAt).toEqual(pointsAt);
    });
    it("keeps room above none that is at least Wilson's", () => {
      const figure = figureOf(measure, takeWithFaults({}));
      expect(figure.value).toBe(0);
      expect(figure.low).toBe(0);
      expect(figure.high).toBeGreaterThan(100 * wilsonInterval(0, 96, 1.96).high);
      expect(figure.high).toBeLessThan(8);
    });
    it('needs 24 written strokes', () => {
      const short = simulatedPerformance({ sheet: 'tempo: 100\n>RLR >LRL; x3', seed: 1, player: machine });
      expect(outcomeOf(measure, short)).toMatchObject({
        state: 'not-measurable',
        reason: { code: 'too-few-strokes' },
      });
    });
  });
}

import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import type { Performance } from '../../../src/core/measures/performance.ts';
import { performanceOf } from '../../../src/core/measures/performance.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

/** A faultless take of 96 strokes in which chosen slots are missed and strokes follow others by so many seconds. */
export function takeWithFaults(faults: {
  readonly missed?: readonly number[];
  readonly extraAfter?: readonly number[];
  readonly doubledAfter?: readonly number[];
}): Performance {
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

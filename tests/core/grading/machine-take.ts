import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { type Performance, performanceOf } from '../../../src/core/measures/performance.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';
import { madeTake, padStroke } from './made-take.ts';

/**
 * Thirty-two beats in triplets, played like a machine at one tempo in the first run and another in the second, but for
 * what `late` says of a slot, s.
 */
export function machineTake(
  bpms: readonly [number, number],
  late: (slot: number) => number = () => 0,
): { readonly strokes: readonly Stroke[]; readonly performance: Performance } {
  const parsed = parseSheet('tempo: 60\n>RLR >LRL ; times: 16');
  if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
  const slots = layOut(parsed.sheet);
  const half = slots.length / 2;
  const time = (slot: number) =>
    slot < half ? (slot * 20) / bpms[0] : (half * 20) / bpms[0] + 3 + ((slot - half) * 20) / bpms[1];
  const alignment: Alignment = {
    ...madeTake().alignment,
    matches: slots.map(({ index }) => ({ slot: index, stroke: index, segment: index < half ? 0 : 1 })),
    segments: [0, 1].map((part) => ({
      firstSlot: part * half,
      lastSlot: (part + 1) * half - 1,
      state: 'graded' as const,
      leadSwapped: false,
      origin: time(part * half),
      period: 60 / bpms[part]!,
    })),
    missed: [],
    extra: [],
    doubled: [],
    outside: [],
  };
  const strokes = slots.map(({ index }) => padStroke(time(index) + late(index)));
  return { strokes, performance: performanceOf({ sheet: parsed.sheet, slots, strokes, alignment }) };
}

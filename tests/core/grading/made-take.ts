import type { Alignment, Segment } from '../../../src/core/alignment/alignment.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import type { Hearing, Stroke } from '../../../src/core/onsets/stroke.ts';

export function padStroke(time: number, levelDb = -20): Stroke {
  return { time, timeSe: 1e-5, levelDb, levelSe: 0.1, sound: 'pad', evidence: 100, timbre: null };
}

/** At 60 BPM in triplets: a third of a second from stroke to stroke. */
const partial = 1 / 3;
const run = (change: Partial<Segment>): Segment => ({
  firstSlot: 0,
  lastSlot: 11,
  state: 'graded',
  leadSwapped: false,
  origin: 1,
  period: 1,
  ...change,
});

/**
 * Two lines of two beats in triplets, each twice: 12 slots a line. The player gives up after four strokes, begins anew,
 * misses slot 7, puts a stroke in behind slot 9, hits slot 10 twice, plays line 1 once more, and stops; line 2 is never
 * played. A noise comes before and one after.
 */
export function madeTake() {
  const parsed = parseSheet('tempo: 60\n>RLR >LRL ; times: 2\nR>LR L>RL ; times: 2');
  if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
  const { sheet } = parsed;
  const slots = layOut(sheet);
  const strokes: Stroke[] = [padStroke(0.2, -40)];
  const put = (time: number): number => strokes.push(padStroke(time)) - 1;
  const matches: Alignment['matches'][number][] = [];
  const play = (segment: number, slot: number, time: number) => {
    matches.push({ slot, stroke: put(time), segment });
  };
  const extra: number[] = [];
  const doubled: number[] = [];
  for (let slot = 0; slot < 4; slot++) play(0, slot, 1 + slot * partial);
  for (let slot = 0; slot < 12; slot++) {
    const time = 5 + slot * partial;
    if (slot !== 7) play(1, slot, time);
    if (slot === 9) extra.push(put(time + partial / 2));
    if (slot === 10) doubled.push(put(time + 0.03));
  }
  for (let slot = 6; slot < 12; slot++) play(2, slot, 10 + (slot - 6) * partial);
  const last = put(14);
  const segments = [
    run({ lastSlot: 3, state: 'abandoned' }),
    run({ origin: 5, leadSwapped: true }),
    run({ firstSlot: 6, state: 'surplus', origin: 10 }),
  ];
  const alignment: Alignment = {
    reference: 'asked-tempo',
    segments,
    matches,
    missed: [7],
    extra,
    doubled,
    outside: [0, last],
    doubt: null,
  };
  const hearing: Hearing = { sounds: strokes, noiseFloorDb: -70, click: null };
  return { sheet, slots, strokes, alignment, hearing };
}

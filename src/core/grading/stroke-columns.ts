import { otherHand } from '../exercise/swap-hands.ts';
import type { Performance } from '../measures/performance.ts';
import type { Stroke } from '../onsets/stroke.ts';
import type { TakeResult } from '../result/take-result.ts';

type Columns = TakeResult['strokes'];

/** The strokes of a take as columns, each with its role, slot, hand and deviation where the alignment gives one. */
export function strokeColumns(strokes: readonly Stroke[], performance: Performance): Columns {
  const { alignment, slots, timing } = performance;
  const role = strokes.map((): Columns['role'][number] => 'outside');
  const slot = strokes.map((): number | null => null);
  const hand = strokes.map((): Columns['hand'][number] => null);
  const deviationMs = strokes.map((): number | null => null);
  for (const match of alignment.matches) {
    const segment = alignment.segments[match.segment]!;
    const written = slots[match.slot]!.hand;
    role[match.stroke] = segment.state === 'graded' ? 'matched' : segment.state;
    slot[match.stroke] = match.slot;
    hand[match.stroke] = segment.leadSwapped ? otherHand(written) : written;
  }
  for (const stroke of alignment.extra) role[stroke] = 'extra';
  for (const stroke of alignment.doubled) role[stroke] = 'doubled';
  performance.strokes.forEach((played, i) => {
    hand[played.stroke] = played.hand;
    const deviation = timing?.deviation[i] ?? null;
    deviationMs[played.stroke] = deviation === null ? null : deviation * 1000;
  });
  return {
    time: strokes.map((stroke) => stroke.time),
    timeSe: strokes.map((stroke) => stroke.timeSe),
    levelDb: strokes.map((stroke) => stroke.levelDb),
    levelSe: strokes.map((stroke) => stroke.levelSe),
    role,
    slot,
    hand,
    deviationMs,
  };
}

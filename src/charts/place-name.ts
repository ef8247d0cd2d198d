import type { TakeResult } from '../core/result/take-result.ts';

/**
 * Where a slot stands, in the words of a lesson; line and repeat are named only where there is more than one.
 *
 * @example placeName(result, 0) // 'line 1, time 1 of 3, bar 1, beat 1, partial 1'
 */
export function placeName(result: TakeResult, slot: number): string {
  const { slots, sheet } = result;
  const lineIndex = slots.line[slot]!;
  const line = sheet.lines[lineIndex];
  const beatInBar = slots.beat[slot]! - firstBeatOfBar(result, slot) + 1;
  const words = [`bar ${slots.bar[slot]! + 1}`, `beat ${beatInBar}`, `partial ${slots.partial[slot]!}`];
  if (line !== undefined && line.repeats > 1)
    words.unshift(`time ${slots.repeat[slot]! + 1} of ${line.repeats}`);
  if (sheet.lines.length > 1) words.unshift(`line ${lineIndex + 1}`);
  return words.join(', ');
}

/** Beat of the repeat on which a slot's bar begins: bars are as long as the sheet says, or as their bar lines do. */
function firstBeatOfBar({ slots, sheet }: TakeResult, slot: number): number {
  const [bar, beat] = [slots.bar[slot]!, slots.beat[slot]!];
  const beatsInBar = sheet.lines[slots.line[slot]!]?.beatsInBar ?? 1;
  if (Math.floor(beat / beatsInBar) === bar) return bar * beatsInBar;
  let first = beat;
  for (let i = slot; i >= 0 && slots.bar[i] === bar && slots.beat[i]! <= first; i--) first = slots.beat[i]!;
  return first;
}

import type { TakeResult } from '../core/result/take-result.ts';

/**
 * Where a slot stands, in the words of a lesson; line and repeat are named only where there is more than one.
 *
 * @example placeName(result, 0) // 'line 1, repeat 1 of 3, bar 1, beat 1, partial 1'
 */
export function placeName(result: TakeResult, slot: number): string {
  const { slots, sheet } = result;
  const lineIndex = slots.line[slot]!;
  const line = sheet.lines[lineIndex];
  const beatInBar = slots.beat[slot]! - firstBeatOfBar(result, slot) + 1;
  const words = [`bar ${slots.bar[slot]! + 1}`, `beat ${beatInBar}`, `partial ${slots.partial[slot]!}`];
  if (line !== undefined && line.repeats > 1)
    words.unshift(`repeat ${slots.repeat[slot]! + 1} of ${line.repeats}`);
  if (sheet.lines.length > 1) words.unshift(`line ${lineIndex + 1}`);
  return words.join(', ');
}

/** Beat of the repeat on which a slot's bar begins: by the sheet's length of a bar, else by the line's bar lines. */
function firstBeatOfBar({ slots, sheet }: TakeResult, slot: number): number {
  const line = slots.line[slot]!;
  const bar = slots.bar[slot]!;
  const beatsInBar = sheet.lines[line]?.beatsInBar ?? 1;
  const ofLine = slots.beat.flatMap((beat, i) =>
    slots.line[i] === line ? [{ beat, bar: slots.bar[i]! }] : [],
  );
  const full = ofLine.every((place) => Math.floor(place.beat / beatsInBar) === place.bar);
  if (full) return bar * beatsInBar;
  return ofLine.reduce(
    (first, place) => (place.bar === bar ? Math.min(first, place.beat) : first),
    slots.beat[slot]!,
  );
}

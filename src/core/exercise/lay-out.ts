import { barOfBeats } from './bars.ts';
import type { Sheet } from './sheet.ts';
import type { Slot } from './slot.ts';
import { swapHands } from './swap-hands.ts';

/**
 * Lays a sheet out into its expected strokes, in the order in which they are played. Each line is played
 * `repeats` times without a gap, hands changed over on every second repeat where the line says so, then rests
 * for `restBeats`. A grace note is a slot of its own before its main stroke's, at the same position. Times run
 * from the first beat of the sheet: one beat lasts 60 / bpm seconds; from the first line without a tempo on,
 * they are null.
 *
 * @example layOut(sheet).map((slot) => slot.hand).join('') // 'RLRLRL' for one repeat of '>RLR >LRL'
 */
export function layOut(sheet: Sheet): Slot[] {
  const slots: Slot[] = [];
  let lineBeat = 0;
  let lineTime: number | null = 0;
  sheet.lines.forEach((line, lineIndex) => {
    const secondsPerBeat = line.bpm === null ? null : 60 / line.bpm;
    if (secondsPerBeat === null) lineTime = null;
    const bars = barOfBeats(line.beats, line.beatsInBar);
    const swapped = swapHands(line.beats);
    for (let repeat = 0; repeat < line.repeats; repeat++) {
      const beats = line.leadChange && repeat % 2 === 1 ? swapped : line.beats;
      beats.forEach((beat, beatIndex) => {
        const divisions = beat.partials.length;
        beat.partials.forEach((note, partialIndex) => {
          if (note === null) return;
          const position = beatIndex + partialIndex / divisions;
          const beatInLine = repeat * beats.length + position;
          const beatTime = lineBeat + beatInLine;
          const time =
            lineTime === null || secondsPerBeat === null ? null : lineTime + beatInLine * secondsPerBeat;
          // Written out: an object that another is spread into takes three times the room.
          const add = (hand: Slot['hand'], grace: boolean): void => {
            slots.push({
              index: slots.length,
              line: lineIndex,
              repeat,
              bar: bars[beatIndex]!,
              beat: beatIndex,
              partial: partialIndex + 1,
              divisions,
              position,
              beatTime,
              time,
              hand,
              accent: !grace && note.accent,
              grace,
              buzz: !grace && note.buzz,
            });
          };
          for (const hand of note.grace) add(hand, true);
          add(note.hand, false);
        });
      });
    }
    const lineLength = line.repeats * line.beats.length + line.restBeats;
    lineBeat += lineLength;
    if (lineTime !== null && secondsPerBeat !== null) lineTime += lineLength * secondsPerBeat;
  });
  return slots;
}

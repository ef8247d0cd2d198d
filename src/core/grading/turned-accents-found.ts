import { barOfBeats } from '../exercise/bars.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Performance } from '../measures/performance.ts';
import type { TurnedAccents } from '../scoring/advice/finding.ts';

/** The one partial that every beat of a line accents, and the line's division; null where beats differ. */
function accentedPartial(slots: readonly Slot[]): { readonly partial: number; readonly of: number } | null {
  const main = slots.filter((slot) => !slot.grace);
  const accents = main.filter((slot) => slot.accent);
  const partials = new Set(accents.map((slot) => slot.partial));
  const divisions = new Set(main.map((slot) => slot.divisions));
  const [partial, of] = [[...partials][0], [...divisions][0]];
  return partials.size === 1 && divisions.size === 1 ? { partial: partial!, of: of! } : null;
}

/**
 * Where the accents turn round, as a musician counts: line, repeat, bar, beat and partial from 1. Turns with the
 * strokes that open them, in order; none where accents can't be told from taps.
 *
 * @example turnedAccentsFound(performance)[0] // { line: 1, repeat: 4, bar: 1, beat: 4, by: 1, stroke: 45, … }
 */
export function turnedAccentsFound({ accents, slots, strokes, sheet }: Performance): TurnedAccents[] {
  if ('refusal' in accents) return [];
  return accents.accents.turns.map(({ from, by }) => {
    const { slot, stroke } = strokes[from]!;
    const { line, repeat, bar } = slot;
    const { beats, beatsInBar } = sheet.lines[line]!;
    const beat = slot.beat - barOfBeats(beats, beatsInBar).indexOf(bar);
    const own = slots.filter((one) => one.line === line);
    const accented = accentedPartial(own);
    return {
      line: line + 1,
      repeat: repeat + 1,
      bar: bar + 1,
      beat: beat + 1,
      by,
      fromStart: slot.beatTime - own[0]!.beatTime < 1,
      writtenPartial: accented?.partial ?? null,
      playedPartial: accented ? ((accented.partial - 1 + by + accented.of) % accented.of) + 1 : null,
      stroke,
    };
  });
}

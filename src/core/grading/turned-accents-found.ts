import type { Performance } from '../measures/performance.ts';
import type { TurnedAccents } from '../scoring/advice/finding.ts';

/**
 * Where the accents turn round, as a musician counts: line, repeat, bar and beat from 1. Turns with the strokes that
 * open them, in order; none where accents can't be told from taps.
 *
 * @example turnedAccentsFound(performance)[0] // { line: 1, repeat: 4, bar: 1, beat: 4, by: 1, stroke: 45 }
 */
export function turnedAccentsFound(performance: Performance): TurnedAccents[] {
  const { accents } = performance;
  if ('refusal' in accents) return [];
  return accents.accents.turns.map(({ from, by }) => {
    const { slot, stroke } = performance.strokes[from]!;
    const { line, repeat, bar } = slot;
    const beat = slot.beat % performance.sheet.lines[line]!.beatsInBar;
    return { line: line + 1, repeat: repeat + 1, bar: bar + 1, beat: beat + 1, by, stroke };
  });
}

import { barOfBeats } from './bars.ts';
import type { Beat, Note } from './sheet.ts';

/** Syllables behind the beat's number, as drummers count aloud; other divisions are counted by dots. */
const syllables: Readonly<Record<number, readonly string[]>> = {
  2: ['&'],
  3: ['trip', 'let'],
  4: ['e', '&', 'a'],
};

function handCell(note: Note | null): string {
  if (note === null) return '-';
  return `${note.grace.join('').toLowerCase()}${note.hand}${note.buzz ? 'z' : ''}`;
}

/**
 * Shows beats in plain text, a block of three rows for each bar: the count, the accents, the hands, each stroke
 * in a column of its own. Lines end without spaces.
 *
 * @example
 * notationColumns(beats, 4) // for '>RLR >LRL'
 * // count    1  trip  let   2  trip  let
 * // accents  >              >
 * // hands    R  L     R     L  R     L
 */
export function notationColumns(beats: readonly Beat[], beatsInBar: number): string {
  const bars: Beat[][] = [];
  barOfBeats(beats, beatsInBar).forEach((bar, index) => {
    bars[bar] ??= [];
    bars[bar].push(beats[index]!);
  });
  const blocks = bars.map((bar) => {
    const rows = ['count    ', 'accents  ', 'hands    '];
    bar.forEach((beat, beatIndex) => {
      const names = syllables[beat.partials.length] ?? [];
      beat.partials.forEach((note, index) => {
        const cells = [
          index === 0 ? `${beatIndex + 1}` : (names[index - 1] ?? '.'),
          note?.accent ? '>' : '',
          handCell(note),
        ];
        const width =
          Math.max(...cells.map((cell) => cell.length)) + (index === beat.partials.length - 1 ? 3 : 2);
        cells.forEach((cell, row) => {
          rows[row] += cell.padEnd(width);
        });
      });
    });
    return rows.map((row) => row.trimEnd()).join('\n');
  });
  return blocks.join('\n\n');
}

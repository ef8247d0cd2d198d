import type { Beat, Note } from './sheet.ts';

function noteText(note: Note | null): string {
  if (note === null) return '-';
  return `${note.grace.join('').toLowerCase()}${note.accent ? '>' : ''}${note.hand}${note.buzz ? 'z' : ''}`;
}

/**
 * Writes beats in text notation, one way for each exercise: a space between beats, ` | ` between bars, grace
 * notes before the accent sign. `parseNotation` reads the same beats back.
 *
 * @example writeNotation(beats) // '>RLR >LRL | l>R-L RLRL'
 */
export function writeNotation(beats: readonly Beat[]): string {
  return beats
    .map((beat) => `${beat.barBefore ? '| ' : ''}${beat.partials.map(noteText).join('')}`)
    .join(' ');
}

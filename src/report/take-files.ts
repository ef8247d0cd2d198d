import type { TakeResult } from '../core/result/take-result.ts';
import { csv } from '../formats/csv.ts';
import { strokesTable } from '../formats/strokes-table.ts';
import { takeMidi } from '../formats/take-midi.ts';
import { notationPicture } from './notation-picture.ts';

/** A file that a report gives out. */
export interface TakeFile {
  readonly name: string;
  /** MIME type. */
  readonly type: string;
  /** What the file is for, in plain words. */
  readonly says: string;
  readonly contents: string | Uint8Array;
}

const handsWords: Readonly<Record<TakeResult['hands'], string>> = {
  'as-written': 'hands as written, not heard',
  'confirmed-by-sound': 'hands as written, and the sound agrees',
  'not-told': "hands as written only, as this take doesn't tell them",
};

/**
 * The files of a take: its strokes as a table and as MIDI, the exercise as a picture, the result itself. What a take
 * doesn't have is left out.
 *
 * @example takeFiles(result).map(({ name }) => name) // ['strokes.csv', 'strokes.mid', 'exercise.svg', 'result.json']
 */
export function takeFiles(result: TakeResult): TakeFile[] {
  const midi = takeMidi(result);
  const picture = notationPicture(result);
  const strokes = 'Every stroke with time, level, place and hand, for a spreadsheet';
  const files: (TakeFile | null)[] = [
    { name: 'strokes.csv', type: 'text/csv', says: strokes, contents: csv(strokesTable(result)) },
    midi === null
      ? null
      : {
          name: 'strokes.mid',
          type: 'audio/midi',
          says: `The graded strokes as played, for music programs (MIDI); ${handsWords[result.hands]}`,
          contents: midi,
        },
    picture === null
      ? null
      : {
          name: 'exercise.svg',
          type: 'image/svg+xml',
          says: 'The exercise in notation, to print or enlarge',
          contents: picture,
        },
    {
      name: 'result.json',
      type: 'application/json',
      says: 'The whole result, for programs and for comparing takes',
      contents: JSON.stringify(result),
    },
  ];
  return files.filter((file) => file !== null);
}

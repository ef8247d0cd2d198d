import type { Hand, Note } from '../../core/exercise/sheet.ts';
import { noteValue } from './note-values.ts';

const place = '<unpitched><display-step>C</display-step><display-octave>5</display-octave></unpitched>';
const instrument = '<instrument id="P1-I1"/><voice>1</voice>';
const sticking = (hand: Hand) => `<technical><fingering placement="below">${hand}</fingering></technical>`;

/** Notes and rests of one beat, a quarter long; `duration` is that of one of its parts in the part's divisions. */
export function beatXml(partials: readonly (Note | null)[], duration: number): string {
  const { type, tuplet, beams } = noteValue(partials.length);
  const first = partials.findIndex((note) => note !== null);
  const last = partials.findLastIndex((note) => note !== null);
  const modification =
    tuplet === null
      ? ''
      : `<time-modification><actual-notes>${tuplet.actual}</actual-notes><normal-notes>${tuplet.normal}</normal-notes></time-modification>`;

  return partials
    .map((note, at) => {
      const tupletMark =
        tuplet !== null && (at === 0 || at === partials.length - 1)
          ? `<tuplet type="${at === 0 ? 'start' : 'stop'}" number="1"/>`
          : '';
      const value = `<duration>${duration}</duration>`;
      const written = `<type>${type}</type>${modification}`;
      if (note === null)
        return `<note><rest/>${value}<voice>1</voice>${written}${notations([tupletMark])}</note>`;
      const state = at === first ? 'begin' : at === last ? 'end' : 'continue';
      const beam =
        beams === 0 || first === last
          ? ''
          : Array.from({ length: beams }, (_, i) => `<beam number="${i + 1}">${state}</beam>`).join('');
      const marks = [
        tupletMark,
        note.buzz ? '<ornaments><tremolo type="unmeasured">0</tremolo></ornaments>' : '',
        sticking(note.hand),
        note.accent ? '<articulations><accent placement="above"/></articulations>' : '',
      ];
      const grace = note.grace.map(graceXml).join('');
      return `${grace}<note>${place}${value}${instrument}${written}<stem>up</stem>${beam}${notations(marks)}</note>`;
    })
    .join('\n');
}

const graceXml = (hand: Hand, _: number, { length }: readonly Hand[]) =>
  `<note><grace${length === 1 ? ' slash="yes"' : ''}/>${place}${instrument}<type>${length === 1 ? 'eighth' : '16th'}</type><stem>up</stem>${notations([sticking(hand)])}</note>\n`;

function notations(marks: readonly string[]): string {
  const text = marks.join('');
  return text === '' ? '' : `<notations>${text}</notations>`;
}

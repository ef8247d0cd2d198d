import type { Sheet, SheetLine } from '../exercise/sheet.ts';
import type { FoundLine } from './recognise-lines.ts';

/** Tempos nearer than this share don't tell two lines apart (our judgement). */
const sameTempo = 0.06;

/** All that can be heard of a line: its rhythm, accents and grace notes, not its hands. */
const heardOf = ({ beats }: SheetLine): string =>
  beats
    .map(({ partials }) =>
      partials
        .map((note) => (note ? `${note.grace.length}${note.accent ? '>' : ''}${note.buzz ? 'z' : '.'}` : '-'))
        .join(''),
    )
    .join(' ');

/**
 * Decides between lines that sound alike, which differ in nothing but their sticking or tempo: by the tempo where it
 * tells, else the one played least so far, in the order of the sheet.
 *
 * @example tellAlike(sheet, [{ line: 0, repeats: 2, bpm: 91, from: 0, to: 9 }])[0].line // the alike line asked at 90
 */
export function tellAlike(sheet: Sheet, found: readonly FoundLine[]): FoundLine[] {
  const heard = sheet.lines.map(heardOf);
  const plays = sheet.lines.map(() => 0);
  return found.map((one) => {
    const alike = heard.flatMap((text, line) => (text === heard[one.line] ? [line] : []));
    const off = (line: number): number => {
      const { bpm } = sheet.lines[line]!;
      return bpm === null ? 0 : Math.abs(Math.log(one.bpm / bpm));
    };
    const nearest = Math.min(...alike.map(off));
    const likely = alike.filter((line) => off(line) <= nearest + sameTempo);
    const line = likely.toSorted((a, b) => plays[a]! - plays[b]! || a - b)[0]!;
    plays[line]!++;
    return { ...one, line };
  });
}

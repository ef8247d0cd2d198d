import { barOfBeats } from '../../core/exercise/bars.ts';
import type { Beat, Sheet, SheetLine } from '../../core/exercise/sheet.ts';
import { beatXml } from './write-note.ts';
import { xmlText } from './xml-text.ts';

const header = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">`;

/** One bar: its beats, and what stands before and after them. */
interface Bar {
  readonly beats: readonly Beat[];
  readonly before: string;
  readonly after: string;
}

/**
 * A sheet as a MusicXML 4.0 score of one percussion part: a line begins with a rehearsal mark, its name and tempo and
 * stands between repeat signs; sticking is written as fingering under the note. What a score has no sign for (hands
 * that change over, the wanted contrast) stands in words as a sheet has it, so that `readMusicXml` gives the same sheet
 * back.
 *
 * @example writeMusicXml(sheet) // '<?xml version="1.0" … <score-partwise version="4.0">…'
 */
export function writeMusicXml(sheet: Sheet): string {
  const parts = sheet.lines.flatMap((line) => line.beats.map(({ partials }) => partials.length));
  const divisions = parts.reduce(leastCommonMultiple, 1);
  const bars = sheet.lines.flatMap((line, index) => barsOfLine(line, index));
  let beatsNow = 0;
  const measures = bars.map(({ beats, before, after }, i) => {
    const changed = beats.length !== beatsNow;
    beatsNow = beats.length;
    const time = changed ? `<time><beats>${beats.length}</beats><beat-type>4</beat-type></time>` : '';
    const head = i === 0 ? `<divisions>${divisions}</divisions>` : '';
    const clef = i === 0 ? '<clef><sign>percussion</sign></clef>' : '';
    const attributes = i === 0 || changed ? `<attributes>${head}${time}${clef}</attributes>\n` : '';
    const notes = beats.map(({ partials }) => beatXml(partials, divisions / partials.length)).join('\n');
    return `<measure number="${i + 1}">\n${attributes}${before}${notes}\n${after}</measure>`;
  });
  const title = sheet.title === '' ? '' : `<work><work-title>${xmlText(sheet.title)}</work-title></work>\n`;
  return `${header}
<score-partwise version="4.0">
${title}<part-list><score-part id="P1"><part-name>Pad</part-name><score-instrument id="P1-I1"><instrument-name>Snare drum</instrument-name></score-instrument><midi-instrument id="P1-I1"><midi-channel>10</midi-channel><midi-unpitched>39</midi-unpitched></midi-instrument></score-part></part-list>
<part id="P1">
${measures.join('\n')}
</part>
</score-partwise>
`;
}

function barsOfLine(line: SheetLine, index: number): Bar[] {
  const { beats, beatsInBar, repeats, restBeats } = line;
  const of = barOfBeats(beats, beatsInBar);
  const count = of.at(-1)! + 1;
  const bars = Array.from({ length: count }, (_, bar): Bar => {
    const opens = bar === 0 ? opening(line, index) : '';
    const closes =
      bar === count - 1
        ? repeats > 1
          ? `<barline location="right"><bar-style>light-heavy</bar-style><repeat direction="backward" times="${repeats}"/></barline>\n`
          : '<barline location="right"><bar-style>light-light</bar-style></barline>\n'
        : '';
    return { beats: beats.filter((_beat, i) => of[i] === bar), before: opens, after: closes };
  });
  return [...bars, ...restBars(restBeats, beatsInBar)];
}

function opening({ label, bpm, repeats, leadChange, ratioBand }: SheetLine, index: number): string {
  const repeat =
    repeats > 1
      ? '<barline location="left"><bar-style>heavy-light</bar-style><repeat direction="forward"/></barline>\n'
      : '';
  const words = [
    label,
    ...(leadChange ? ['lead: changes'] : []),
    ...(ratioBand === null ? [] : [`ratio: ${ratioBand.minDb} to ${ratioBand.maxDb} dB`]),
  ];
  const said = words
    .map((text) => direction(`<words xml:space="preserve">${xmlText(text)}</words>`, ''))
    .join('');
  const tempo =
    bpm === null
      ? ''
      : direction(
          `<metronome><beat-unit>quarter</beat-unit><per-minute>${bpm}</per-minute></metronome>`,
          `<sound tempo="${bpm}"/>`,
        );
  return `${repeat}${direction(`<rehearsal>${index + 1}</rehearsal>`, '')}${said}${tempo}`;
}

const direction = (type: string, sound: string) =>
  `<direction placement="above"><direction-type>${type}</direction-type>${sound}</direction>\n`;

/** Bars of rest after a line; the last may be shorter. Half beats of rest round up. */
function restBars(restBeats: number, beatsInBar: number): Bar[] {
  const rest: Beat = { partials: [null], barBefore: false };
  const whole = Math.ceil(restBeats);
  return Array.from({ length: Math.ceil(whole / beatsInBar) }, (_, bar) => ({
    beats: Array.from({ length: Math.min(beatsInBar, whole - bar * beatsInBar) }, () => rest),
    before: '',
    after: '',
  }));
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return (a / x) * b;
}

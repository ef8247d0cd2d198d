import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { readMusicXml } from '../../../src/formats/music-xml/read-music-xml.ts';
import { scoreFaultSentence, scoreNoteSentence } from '../../../src/formats/music-xml/score-sentences.ts';
import { describeOutside } from '../../outside.ts';
import { onPlainStack } from '../../support/on-plain-stack.ts';

const score = (...measures: string[]) =>
  `<?xml version="1.0"?><score-partwise version="4.0"><part-list><score-part id="P1"><part-name>Pad</part-name></score-part></part-list><part id="P1">${measures
    .map((inside, i) => `<measure number="${i + 1}">${inside}</measure>`)
    .join('')}</part></score-partwise>`;
const attributes = (divisions: number, beats = 4, beatType = 4) =>
  `<attributes><divisions>${divisions}</divisions><time><beats>${beats}</beats><beat-type>${beatType}</beat-type></time></attributes>`;
const unpitched = '<unpitched><display-step>C</display-step><display-octave>5</display-octave></unpitched>';
const note = (duration: number, inside = '') =>
  `<note>${unpitched}<duration>${duration}</duration>${inside}</note>`;
const rest = (duration: number) => `<note><rest/><duration>${duration}</duration></note>`;
const accent = '<notations><articulations><accent/></articulations></notations>';
const lyric = (hand: string) => `<lyric><text>${hand}</text></lyric>`;

function read(text: string) {
  const outcome = readMusicXml(text);
  if (!outcome.ok) throw new Error(scoreFaultSentence(outcome.fault));
  return { ...outcome, notation: outcome.sheet.lines.map(({ beats }) => writeNotation(beats)) };
}
const faultOf = (text: string) => {
  const outcome = readMusicXml(text);
  return outcome.ok ? null : outcome.fault.code;
};

describeOutside('a score that validates against the published schema', ['triplet.musicxml'], (folder) => {
  it('is the accented triplet that stands in it', () => {
    const { notation, sheet, notes } = read(readFileSync(join(folder, 'triplet.musicxml'), 'utf8'));
    expect(notation).toEqual(['>RLR']);
    expect(sheet.lines[0]).toMatchObject({ bpm: null, repeats: 1 });
    expect(notes).toEqual([]);
  });
});

describe('readMusicXml', () => {
  it('takes hands from syllables, accents from articulations, tempo from the metronome mark', () => {
    const tempo =
      '<direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>112</per-minute></metronome></direction-type></direction>';
    const { notation, sheet } = read(
      score(
        attributes(3, 2) +
          tempo +
          [
            note(1, accent + lyric('R')),
            note(1, lyric('r')),
            note(1, lyric('L')),
            rest(1),
            note(1, accent + lyric('L')),
            note(1, lyric('L')),
          ].join(''),
      ),
    );
    expect(notation).toEqual(['>RRL ->LL']);
    expect(sheet.lines[0]).toMatchObject({ bpm: 112, beatsInBar: 2 });
  });

  it('feels 12/8 in dotted beats, and gives the tempo of the dotted beat', () => {
    const bar = [1, 2, 3, 4].map(() => note(1, accent) + note(1) + note(1)).join('');
    const { notation, sheet, notes } = read(score(`${attributes(2, 12, 8)}<sound tempo="150"/>${bar}`));
    expect(notation).toEqual(['>RLR >LRL >RLR >LRL']);
    expect(sheet.lines[0]!.bpm).toBe(100);
    expect(notes).toEqual([{ code: 'score-sticking-added', facts: { strokes: 12 } }]);
    expect(scoreNoteSentence(notes[0]!)).toContain('12 strokes');
  });

  it('lets programs round a triplet, and takes a tied note for no stroke', () => {
    const rounded = note(85) + note(85) + note(86);
    const tied = `${note(128, '<tie type="start"/>')}${note(128, '<tie type="stop"/>')}`;
    expect(read(score(attributes(256, 2) + rounded + tied)).notation).toEqual(['RLR L-']);
  });

  it('makes lines of repeat signs, double bars and bars of rest', () => {
    const bar = note(1) + note(1);
    const repeated = '<barline location="right"><repeat direction="backward" times="4"/></barline>';
    const double = '<barline location="right"><bar-style>light-light</bar-style></barline>';
    const { sheet } = read(
      score(attributes(1, 2) + bar + repeated, bar + bar + double, bar, rest(2), rest(2), bar),
    );
    expect(sheet.lines.map(({ repeats, restBeats, beats }) => [repeats, restBeats, beats.length])).toEqual([
      [4, 0, 2],
      [1, 0, 4],
      [1, 4, 2],
      [1, 0, 2],
    ]);
  });

  it('says what it leaves out: chords, other voices and parts', () => {
    const chord = note(1, '').replace('<note>', '<note><chord/>');
    const voice2 = `<backup><duration>2</duration></backup>${note(2, '<voice>2</voice>')}`;
    const first = score(
      attributes(1, 2) + note(1, '<voice>1</voice>') + chord + note(1, '<voice>1</voice>') + voice2,
    );
    const two = first.replace(
      '</score-partwise>',
      `<part id="P2"><measure number="1">${note(4)}</measure></part></score-partwise>`,
    );
    const { notation, notes } = read(two);
    expect(notation).toEqual(['R L']);
    expect(notes.map(({ code }) => code)).toEqual([
      'score-other-parts',
      'score-other-voices',
      'score-chords',
      'score-sticking-added',
    ]);
  });

  it.each([
    ['score-unreadable', '<score-partwise><part>'],
    ['score-unreadable', 'no score'],
    ['score-unreadable', '<!DOCTYPE a [<!ENTITY b "c">]><score-partwise>&b;</score-partwise>'],
    ['score-not-music', '<html/>'],
    ['score-timewise', '<score-timewise/>'],
    ['score-without-strokes', '<score-partwise/>'],
    ['score-without-strokes', score(rest(4))],
    ['score-bar-uneven', score(attributes(13) + note(1) + note(12) + rest(39))],
    [
      'score-endings',
      score(`${attributes(1)}<barline><ending number="1" type="start"/></barline>${note(4)}`),
    ],
    ['score-line-unwritable', score(attributes(1), ...Array.from({ length: 200 }, () => note(1).repeat(4)))],
    ['score-too-large', `<a>${' '.repeat(8_000_001)}</a>`],
  ])('answers with %s', (code, text) => {
    expect(faultOf(text)).toBe(code);
    const outcome = readMusicXml(text);
    if (!outcome.ok) expect(scoreFaultSentence(outcome.fault)).toMatch(/^[A-Z].*\.$/s);
  });

  it('reads more words in a bar than a call takes arguments', () => {
    const words = `<direction><direction-type><words/></direction-type></direction>`;
    const text = score(attributes(1) + words + note(1).repeat(4));
    const { stdout, stderr } = onPlainStack(`
      import { readMusicXml } from '${new URL('../../../src/formats/music-xml/read-music-xml.ts', import.meta.url)}';
      const text = ${JSON.stringify(text)}.replace('<words/>', '<words/>'.repeat(200_000));
      console.log(readMusicXml(text).sheet.lines[0].notation);`);
    expect([stdout, stderr]).toEqual(['R L R L\n', '']);
  });

  it('gives an answer for any text, and quickly', () => {
    const good = score(attributes(3, 2) + note(1, accent + lyric('R')) + note(1) + note(1) + rest(3));
    const damaged = fc
      .tuple(fc.nat(good.length), fc.nat(40), fc.string({ maxLength: 20 }))
      .map(([at, cut, put]) => good.slice(0, at) + put + good.slice(at + cut));
    const numbers = fc
      .tuple(fc.double(), fc.double(), fc.double())
      .map(([a, b, c]) => score(attributes(a, b, c) + note(b) + note(c)));
    fc.assert(
      fc.property(fc.oneof(damaged, numbers, fc.string()), (text) => {
        const outcome = readMusicXml(text);
        if (outcome.ok) expect(outcome.sheet.lines.length).toBeGreaterThan(0);
      }),
      { seed: 3, numRuns: 1500 },
    );
    expect(faultOf('<a>'.repeat(200_000))).toBe('score-unreadable');
  });
});

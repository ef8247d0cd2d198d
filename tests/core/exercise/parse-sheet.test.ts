import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultSentences } from '../../../src/core/exercise/fault-sentences.ts';
import { faultText } from '../../../src/core/exercise/fault-text.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

function linesOf(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(parsed.faults.map((fault) => faultText(text, fault)).join('\n'));
  return parsed.sheet.lines;
}

const faultsOf = (text: string) => {
  const parsed = parseSheet(text);
  return parsed.ok ? [] : parsed.faults.map(({ code, line, column }) => [code, line, column]);
};

describe('parseSheet', () => {
  it('reads the example of its comment', () => {
    const parsed = parseSheet(`
      title: Off the beat
      tempo: 110
      triplet-2-hand-to-hand ; times: 4 ; rest: 8   # two bars of rest
      RL>R LR>L ; times: 8 ; lead: changes ; ratio: 8 to 16 dB ; name: Accent on three
    `);
    expect(parsed).toMatchObject({
      ok: true,
      sheet: {
        title: 'Off the beat',
        lines: [
          {
            id: 'triplet-2-hand-to-hand',
            label: 'Triplets, accent 2, hand to hand',
            bpm: 110,
            repeats: 4,
            restBeats: 8,
            leadChange: false,
            ratioBand: null,
          },
          {
            label: 'Accent on three',
            notation: 'RL>R LR>L',
            bpm: 110,
            repeats: 8,
            beatsInBar: 4,
            restBeats: 0,
            leadChange: true,
            ratioBand: { minDb: 8, maxDb: 16 },
          },
        ],
      },
    });
  });

  it('lets a setting hold for the lines below it, and a line override it', () => {
    const lines = linesOf('R\ntempo: 90; rest: 2\nR\nR; tempo: open; x3\ntempo: 100\nR');
    expect(lines.map(({ bpm, restBeats, repeats }) => [bpm, restBeats, repeats])).toEqual([
      [null, 0, 1],
      [90, 2, 1],
      [null, 2, 3],
      [100, 2, 1],
    ]);
  });

  it('takes the bar from the line, else from bar lines, else from the sheet', () => {
    const lines = linesOf('bar: 3\nR\nR L | R L\nR L | R L ; bar: 5\nR; bar: 6');
    expect(lines.map(({ beatsInBar }) => beatsInBar)).toEqual([3, 2, 5, 6]);
  });

  it('reads a sheet without a title, a last line break or plain line ends', () => {
    const parsed = parseSheet('>RLR >LRL\r\n# end');
    expect(parsed.ok && [parsed.sheet.title, parsed.sheet.lines.length]).toEqual(['', 1]);
  });

  it('reads for whom a sheet is, until when and what for', () => {
    const parsed = parseSheet('for: Mirelle\ndue: 2026-03-16\nnote: "Taps low; wrists loose"\n>RLR >LRL');
    expect(parsed.ok && parsed.sheet.assigned).toEqual({
      player: 'Mirelle',
      due: '2026-03-16',
      note: 'Taps low; wrists loose',
    });
    const plain = parseSheet('>RLR >LRL');
    expect(plain.ok && 'assigned' in plain.sheet).toBe(false);
  });

  it.each([
    ['due: 16 March\nR', 'setting-unreadable'],
    ['due: 2026-02-30\nR', 'setting-unreadable'],
    ['for:\nR', 'setting-empty'],
    ['due: 2026-03-16\ndue: 2026-03-17\nR', 'heading-twice'],
    ['R ; due: 2026-03-16', 'heading-on-line'],
    [`note: ${'n'.repeat(1001)}\nR`, 'name-too-long'],
  ])('refuses %.30j', (text, code) => {
    expect(faultsOf(text).map(([first]) => first)).toEqual([code]);
  });

  it('tells every fault at its place, in order', () => {
    const text = [
      'titel: Off the beat',
      'tempo: fast ; rest 2,5',
      'triplet-2-hand-to-hnad ; tmes: 4 ; tempo 3 ; tempo 100 ; soft',
      'RLR LXL ; name: "never closed',
      ' ; times: 2',
      'RLR | RLR LRL ; bar: 1 ; title: here',
      'name: Nobody',
      'RLR rl',
    ].join('\n');
    expect(faultsOf(text)).toEqual([
      ['unknown-setting', 1, 1],
      ['setting-unreadable', 2, 8],
      ['setting-not-whole', 2, 20],
      ['unknown-exercise', 3, 1],
      ['unknown-setting', 3, 26],
      ['setting-out-of-range', 3, 42],
      ['setting-twice', 3, 46],
      ['not-a-setting', 3, 58],
      ['quote-open', 4, 17],
      ['exercise-missing', 5, 2],
      ['bar-too-long', 6, 1],
      ['heading-on-line', 6, 26],
      ['name-without-line', 7, 1],
      ['grace-without-stroke', 8, 5],
    ]);
  });

  it.each([
    ['', 'sheet-empty'],
    ['# nothing\ntempo: 100', 'sheet-empty'],
    ['title: a\ntitle: b\nR', 'heading-twice'],
    [`title: ${'t'.repeat(201)}\nR`, 'name-too-long'],
    ['R\n'.repeat(201), 'too-many-lines'],
    [`${'RLRLRLRLRLRL '.repeat(100)}; times: 999`, 'too-many-strokes'],
    ['#'.repeat(200_001), 'sheet-too-long'],
    ['R ; name: "a" b', 'text-after-quote'],
  ])('refuses %.30j', (text, code) => {
    expect(faultsOf(text).map(([first]) => first)).toContain(code);
  });

  it('tells 20 faults at most', () => {
    expect(faultsOf('X ; soft ; loud\n'.repeat(50))).toHaveLength(20);
  });

  it('answers any text with a sheet or with sentences about it', () => {
    const words = fc.constantFrom(
      'title', 'tempo', 'times', 'bar', 'rest', 'lead', 'ratio', 'name', 'triplet-1-doubles', '>RLR', 'lR-Lz',
      ':', ';', '#', '"', '|', ' ', '\n', '\t', '8', '8 to 16 dB', 'open', 'changes', 'x2', '\u202e', '\u0007', '🥁',
    ); // biome-ignore format: a list of words
    const texts = fc.oneof(
      fc.array(words, { maxLength: 60 }).map((list) => list.join('')),
      fc.string({ unit: 'binary', maxLength: 300 }),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const parsed = parseSheet(text);
        if (parsed.ok) return;
        expect(parsed.faults.length).toBeGreaterThan(0);
        for (const fault of parsed.faults) {
          const line = text.split('\n')[fault.line - 1];
          expect([...line!].length + 1).toBeGreaterThanOrEqual(fault.column);
          const shown = faultText(text, fault);
          expect(shown).not.toMatch(/undefined|NaN|[^\P{C}\n]/u);
          // Sentence, line and caret; of an empty line only the sentence.
          expect(shown.split('\n')).toHaveLength(line!.trim() === '' ? 1 : 3);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('stays quick on the longest texts it takes', () => {
    const long = [';'.repeat(200_000), '"'.repeat(200_000), 'a'.repeat(200_000), '>RLR '.repeat(40_000)];
    const started = performance.now();
    for (const text of long) expect(parseSheet(text).ok).toBe(false);
    expect(performance.now() - started).toBeLessThan(5000);
  });

  it('has a sentence with a value to show and a thing to do for each code', () => {
    for (const [code, sentence] of Object.entries(faultSentences)) {
      expect(sentence({ setting: 'tempo', value: 'X', sign: 'X' }), code).toMatch(/^["A-Z].*[a-z].*[.:\d-]$/);
    }
  });
});

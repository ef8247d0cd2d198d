import { describe, expect, it } from 'vitest';
import { splitSheetLine } from '../../../src/core/exercise/split-sheet-line.ts';

const short = (line: string) => splitSheetLine(line).pieces.map(({ word, value }) => [word, value]);

describe('splitSheetLine', () => {
  it('splits the example of its comment', () => {
    expect(splitSheetLine('>RLR ; name: "A; B" # why')).toEqual({
      pieces: [
        { word: null, column: 1, value: '>RLR', valueColumn: 1 },
        { word: 'name', column: 8, value: 'A; B', valueColumn: 14 },
      ],
      fault: null,
    });
  });

  it('takes known words without a colon and any word with one', () => {
    expect(short('tempo 110; Rest : 4 ;wrod:x;soft 3\r')).toEqual([
      ['tempo', '110'],
      ['rest', '4'],
      ['wrod', 'x'],
      [null, 'soft 3'],
    ]);
    expect(short('due 2026-03-16; for Mirelle')).toEqual([
      ['due', '2026-03-16'],
      ['for', 'Mirelle'],
    ]);
  });

  it('keeps number signs in titles, names and notes unless a space follows', () => {
    expect(short('title: Study #3 # mine')).toEqual([['title', 'Study #3']]);
    expect(short('note: Study #3, slowly # mine')).toEqual([['note', 'Study #3, slowly']]);
    expect(short('for: Pupil #2')).toEqual([['for', 'Pupil #2']]);
    expect(short('RLR #mine')).toEqual([[null, 'RLR']]);
    expect(short('# all of it ; x')).toEqual([[null, '']]);
    expect(short('RL#R')).toEqual([[null, 'RL#R']]);
  });

  it('reads doubled quotes as one and tells of open ones', () => {
    expect(short('name: "5"" pad"')).toEqual([['name', '5" pad']]);
    expect(short('name: 5" pad')).toEqual([['name', '5" pad']]);
    expect(splitSheetLine('RLR ; name: "pad').fault).toEqual({ code: 'quote-open', column: 13 });
    expect(splitSheetLine('name: "pad" x').fault).toEqual({ code: 'text-after-quote', column: 13 });
  });
});

import { describe, expect, it } from 'vitest';
import { turnedAccentsFound } from '../../../src/core/grading/turned-accents-found.ts';
import { sentence } from '../../../src/core/result/sentences.ts';
import { accentsTurnedRound } from '../../../src/core/scoring/advice/accents-turned-round.ts';
import { plain, takeOfLevels } from '../measures/made-levels.ts';
import { input } from '../scoring/advice/made-input.ts';

describe('turnedAccentsFound', () => {
  it('names line, repeat, bar and beat as musicians count, and advice says them', () => {
    // Six strokes a repeat: slot 39 opens the second beat of the seventh repeat.
    const take = takeOfLevels('>RLR >LRL; x12', (slot) =>
      slot.index < 39 ? plain(slot) : slot.partial === 2 ? -18 : -30,
    );
    const turns = turnedAccentsFound(take);
    expect(turns).toEqual([
      {
        line: 1,
        repeat: 7,
        bar: 1,
        beat: 2,
        by: 1,
        fromStart: false,
        writtenPartial: 1,
        playedPartial: 2,
        stroke: 39,
      },
    ]);
    const [advice] = accentsTurnedRound({ ...input([]), turns });
    expect(sentence(advice!)).toMatch(
      /^From repeat 7, bar 1, beat 2 on, accents are heard on partial 2, where partial 1 is written: /,
    );
  });

  it('counts beats by the bar lines where there are any', () => {
    // Nine strokes a repeat, bars of one beat and of two: slot 39 opens the second bar of the fifth repeat.
    const take = takeOfLevels('>RLR | >LRL >RLR; x8', (slot) =>
      slot.index < 39 ? plain(slot) : slot.partial === 2 ? -18 : -30,
    );
    expect(turnedAccentsFound(take)).toMatchObject([{ repeat: 5, bar: 2, beat: 1, stroke: 39 }]);
  });

  it('finds none in a take as written', () => {
    expect(turnedAccentsFound(takeOfLevels('>RLR >LRL; x12', plain))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { soundChoice } from '../../../src/page/practise/kept-choice.ts';
import {
  chosenSheet,
  firstChoice,
  type PractiseChoice,
  secondsOf,
} from '../../../src/page/practise/practise-choice.ts';

const lines = (choice: Partial<PractiseChoice>) => {
  const chosen = chosenSheet({ ...firstChoice, ...choice });
  if (!chosen.ok) throw new Error(chosen.sentence);
  return chosen.sheet.lines;
};

describe('chosenSheet', () => {
  it('is one line of the catalogue to begin with, 8 times at 90: 32 beats of 2/3 s', () => {
    const chosen = chosenSheet(firstChoice);
    expect(chosen).toMatchObject({ ok: true, settings: false });
    const [line] = lines({});
    expect(line).toMatchObject({ id: 'triplet-1-hand-to-hand', bpm: 90, repeats: 8 });
    expect(secondsOf({ title: '', lines: lines({}) })).toBeCloseTo((32 * 60) / 90, 9);
  });

  it('plays own notes at the tempo and as often as chosen', () => {
    expect(lines({ way: 'own', own: 'R>LR L>RL', bpm: 72, repeats: 3, leadChange: true })).toMatchObject([
      { notation: 'R>LR L>RL', bpm: 72, repeats: 3, leadChange: true },
    ]);
  });

  it('keeps to what a sheet says of tempo and times, unless it shall not', () => {
    const sheet = { name: 'week.sheet', text: 'tempo: 100\n>RLR ; times: 4 ; rest: 4\nR>LR ; tempo: open\n' };
    const way = { way: 'sheet', sheet, bpm: 60, repeats: 9 } as const;
    expect(lines(way).map(({ bpm, repeats }) => [bpm, repeats])).toEqual([
      [100, 4],
      [60, 1],
    ]);
    expect(lines({ ...way, tempoAsWritten: false }).map(({ bpm, repeats }) => [bpm, repeats])).toEqual([
      [60, 4],
      [60, 1],
    ]);
    expect(secondsOf({ title: '', lines: lines(way) })).toBeCloseTo((8 * 60) / 100 + 1, 9);
  });

  it('says at once what is wrong', () => {
    expect(chosenSheet({ ...firstChoice, way: 'own', own: 'RXR' })).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('"X" means nothing here'),
    });
    expect(chosenSheet({ ...firstChoice, way: 'sheet' }).ok).toBe(false);
    expect(chosenSheet({ ...firstChoice, exercise: 'gone' }).ok).toBe(false);
  });
});

describe('soundChoice', () => {
  it('gives back what was kept', () => {
    const choice: PractiseChoice = {
      ...firstChoice,
      way: 'sheet',
      sheet: { name: 'a', text: 'RLR' },
      bpm: 111,
      repeats: 2,
    };
    expect(soundChoice(JSON.parse(JSON.stringify(choice)))).toEqual(choice);
  });

  it.each([
    null,
    3,
    'x',
    [],
    { bpm: -1, repeats: 1e9, way: 'else', sheet: { name: 1 }, own: {}, exercise: null },
  ])('begins anew with what is not sound: %j', (kept) => {
    expect(soundChoice(kept)).toEqual(firstChoice);
  });
});

import { expect, it } from 'vitest';
import { soundChoice } from '../../../src/page/practise/kept-choice.ts';
import { chosenSheet, firstChoice } from '../../../src/page/practise/practise-choice.ts';

const rising = { ...firstChoice, rising: true, bpm: 80, riseTo: 120, riseStep: 10, riseTimes: 2 };

it('plays one exercise at each tempo of a rise', () => {
  const chosen = chosenSheet(rising);
  if (!chosen.ok) throw new Error(chosen.sentence);
  expect(chosen.rising).toBe(true);
  expect(chosen.sheet.lines.map(({ bpm, repeats }) => [bpm, repeats])).toEqual(
    [80, 90, 100, 110, 120].map((bpm) => [bpm, 2]),
  );
});

it('asks for tempos enough to tell where something breaks', () => {
  expect(chosenSheet({ ...rising, riseTo: 100 })).toEqual({
    ok: false,
    rising: true,
    sentence:
      'From 80 to 100 by 10 makes 3 tempos; it takes 4 to tell where it breaks. Let it go further, or in smaller steps.',
  });
});

it('leaves sheets of several lines alone', () => {
  const two = chosenSheet({ ...rising, way: 'own', own: '>RLR\nR>LR' });
  expect(two).toMatchObject({ ok: true, rising: false });
});

it('is remembered', () => {
  expect(soundChoice(JSON.parse(JSON.stringify(rising)))).toEqual(rising);
  expect(soundChoice({ riseTo: 1e9, riseStep: 0, rising: 'yes' })).toEqual(firstChoice);
});

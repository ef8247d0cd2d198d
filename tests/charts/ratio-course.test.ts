import { expect, it } from 'vitest';
import { ratioCourse } from '../../src/charts/ratio-course.ts';
import { smallTake } from './small-take.ts';

it('follows the ratio from start to end: accents that sink by 0.2 dB a beat', () => {
  const take = smallTake(40);
  // Accents begin 11 dB above the middle of the taps, −23 dB, and sink.
  const levelDb = take.strokes.levelDb.map((level, i) =>
    take.slots.accent[i] ? level - 0.2 * (i / 3) : level,
  );
  const { rows } = ratioCourse.table({ ...take, strokes: { ...take.strokes, levelDb } });
  // Windows of 8 beats have their middles 3.5 beats from the ends.
  expect(rows[0]).toEqual(['both hands', '10.3 dB', '3.9 dB', '10.3 dB', '3.9 dB']);
});

import { describe, expect, it } from 'vitest';
import { lostAccents } from '../../../src/core/measures/lost-accents.ts';
import { figureOf, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const sheet = '>RLR >LRL; x16';

describe('lost-accents', () => {
  it('are the accents played like taps', () => {
    const lost = [9, 30, 60];
    const take = takeOfLevels(sheet, (slot) => (lost.includes(slot.index) ? -30 : plain(slot)));
    const figure = figureOf(lostAccents, take);
    expect(figure.value).toBeCloseTo((100 * 3) / 32, 9);
    expect(figure.pointsAt).toEqual(lost);
  });

  it('are rare where none was lost: under one in a hundred accents', () => {
    const values = Array.from(
      { length: 60 },
      (_, seed) => figureOf(lostAccents, takeOfLevels(sheet, plain, { seed: seed + 1 })).value,
    );
    expect(values.reduce((a, b) => a + b, 0) / values.length).toBeLessThan(1);
  });

  it('are not told where accents and taps are too near', () => {
    const near = takeOfLevels(sheet, (slot) => (slot.accent ? -26 : -30));
    expect(outcomeOf(lostAccents, near)).toMatchObject({
      state: 'not-measurable',
      reason: { code: 'accents-not-told-from-taps' },
    });
  });
});

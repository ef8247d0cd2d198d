import { describe, expect, it } from 'vitest';
import { addedAccents } from '../../../src/core/measures/added-accents.ts';
import { figureOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

describe('added-accents', () => {
  it('are the taps played like accents', () => {
    const added = [10, 31, 61];
    const take = takeOfLevels('>RLR >LRL; x16', (slot) => (added.includes(slot.index) ? -18 : plain(slot)));
    const figure = figureOf(addedAccents, take);
    expect(figure.value).toBeCloseTo((100 * 3) / 64, 9);
    expect(figure.pointsAt).toEqual(added);
  });
});

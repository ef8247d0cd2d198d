import { describe, expect, it } from 'vitest';
import { addedAccents } from '../../../src/core/measures/added-accents.ts';
import { lostAccents } from '../../../src/core/measures/lost-accents.ts';
import { movedAccents } from '../../../src/core/measures/moved-accents.ts';
import { figureOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

describe('moved-accents', () => {
  it('are accents that sounded one stroke early or late, and neither lost nor added', () => {
    const levels = new Map([
      [9, -30],
      [10, -18],
      [30, -30],
      [29, -18],
    ]);
    const take = takeOfLevels('>RLR >LRL; x16', (slot) => levels.get(slot.index) ?? plain(slot));
    expect(figureOf(movedAccents, take)).toMatchObject({ value: 6.25, pointsAt: [9, 30] });
    expect(figureOf(lostAccents, take).value).toBe(0);
    expect(figureOf(addedAccents, take).value).toBe(0);
  });
});

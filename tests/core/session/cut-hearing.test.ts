import { describe, expect, it } from 'vitest';
import { cutHearing } from '../../../src/core/session/cut-hearing.ts';
import { padStrokes } from '../alignment/made-sheet.ts';

describe('cutHearing', () => {
  const click = { times: [0, 1, 2, 3, 4], period: 1, levelDb: -20 };
  const hearing = { sounds: padStrokes([0.5, 1.5, 2.5, 3.5], [-9, -8, -7, -6]), noiseFloorDb: -70, click };
  it('counts times from the cut', () => {
    const cut = cutHearing(hearing, { from: 1, to: 3 });
    expect(cut.sounds.map(({ time, levelDb }) => [time, levelDb])).toEqual([
      [0.5, -8],
      [1.5, -7],
    ]);
    expect(cut.click).toEqual({ times: [0, 1], period: 1, levelDb: -20 });
  });
  it('hears no metronome in a single click', () => {
    expect(cutHearing(hearing, { from: 1, to: 1.9 }).click).toBeNull();
  });
});

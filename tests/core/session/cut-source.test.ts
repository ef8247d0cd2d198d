import { describe, expect, it } from 'vitest';
import { cutHearing, cutSource } from '../../../src/core/session/cut-source.ts';
import { formulaSource } from '../../support/float-source.ts';
import { padStrokes } from '../alignment/simulated-take.ts';

describe('cutSource', () => {
  const part = cutSource(
    formulaSource(100, 1000, (n) => n),
    { from: 2, to: 3 },
  );
  it('is a recording of its own, with silence round it', () => {
    expect([part.length, part.sampleRate, part.channels]).toEqual([100, 100, 1]);
    expect([...part.read(0, 0, 3)]).toEqual([200, 201, 202]);
    expect([...part.read(0, -2, 1)]).toEqual([0, 0, 200]);
    expect([...part.read(0, 98, 102)]).toEqual([298, 299, 0, 0]);
    expect([...part.read(0, 200, 202)]).toEqual([0, 0]);
  });
  it('ends where the recording ends', () => {
    expect(
      cutSource(
        formulaSource(100, 1000, () => 0),
        { from: 9, to: 12 },
      ).length,
    ).toBe(100);
  });
});

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

import { describe, expect, it } from 'vitest';
import { noteHearing, velocityDb } from '../../../src/core/onsets/note-hearing.ts';

describe('velocityDb', () => {
  // DLS level 1: attenuation 20·lg(127²/v²); quoted from memory.
  it.each([
    [127, 0],
    [100, -4.152],
    [64, -11.905],
    [32, -23.946],
    [1, -84.152],
  ])('velocity %d is %d dB', (velocity, db) => {
    expect(velocityDb(velocity)).toBeCloseTo(db, 2);
  });
});

describe('noteHearing', () => {
  it('takes every note for a stroke, as exact as the file', () => {
    const { sounds, click } = noteHearing([
      { time: 1, velocity: 64, key: 38, step: 0.001 },
      { time: 0.5, velocity: 127, key: 38, step: 0.002 },
    ]);
    expect(click).toBeNull();
    expect(sounds.map(({ time }) => time)).toEqual([0.5, 1]);
    expect(sounds[0]).toMatchObject({ levelDb: 0, sound: 'pad', timbre: null });
    expect(sounds[0]!.timeSe).toBeCloseTo(0.002 / Math.sqrt(12), 12);
    // Half a step of velocity either way: the level changes by about 0.27 dB at 64.
    expect(sounds[1]!.levelSe).toBeCloseTo((velocityDb(64.5) - velocityDb(63.5)) / Math.sqrt(12), 3);
  });

  it('counts head and rim of one stroke once, by the louder, and a fast double twice', () => {
    const note = (time: number, velocity: number, key: number) => ({ time, velocity, key, step: 0.001 });
    const { sounds } = noteHearing([
      note(1, 30, 40),
      note(1.002, 90, 38),
      note(1.5, 60, 38),
      note(1.502, 61, 38),
    ]);
    expect(sounds.map(({ time }) => time)).toEqual([1, 1.5, 1.502]);
    expect(sounds[0]!.levelDb).toBeCloseTo(velocityDb(90), 12);
  });
});

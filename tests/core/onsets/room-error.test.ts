import { describe, expect, it } from 'vitest';
import { withRoomError } from '../../../src/core/onsets/room-error.ts';
import { heardSound } from '../../support/heard-sound.ts';

/** Strokes after which the sound falls by so many dB. */
const strokes = (fallDb: number, cut = false) =>
  Array.from({ length: 12 }, (_, i) =>
    heardSound(i, {
      levelDb: i % 3 === 0 ? -10 : -26,
      levelSe: 0.3,
      timbre: { values: [0, 0, 0, fallDb], errors: [0, 0, 0, 0], cut },
    }),
  );

describe('withRoomError', () => {
  it('adds nothing on a dry pad', () => {
    expect(withRoomError(strokes(28), null)).toEqual(strokes(28));
  });

  it('adds the more the slower the sound falls, in squares, up to half a decibel or so', () => {
    const errors = [24, 18, 15, 10, 2].map((fall) => withRoomError(strokes(fall), null)[0]!.levelSe);
    for (let i = 1; i < errors.length; i++) expect(errors[i]).toBeGreaterThanOrEqual(errors[i - 1]!);
    expect(errors[4]).toBeGreaterThan(errors[0]! + 0.05);
    expect(errors[4]).toBeLessThan(1);
    expect(errors[4]).toBe(errors[3]);
  });

  it('changes nothing else, and nothing of a click', () => {
    const sounds = [...strokes(8), heardSound(20, { sound: 'click', levelSe: 0.1 })];
    const found = withRoomError(sounds, null);
    expect(found.at(-1)).toEqual(sounds.at(-1));
    expect(found.map(({ levelSe: _, ...rest }) => rest)).toEqual(
      sounds.map(({ levelSe: _, ...rest }) => rest),
    );
  });

  it('knows no room where every sound is cut short or there is none', () => {
    expect(withRoomError(strokes(5, true), null)).toEqual(strokes(5, true));
    expect(withRoomError([], null)).toEqual([]);
  });

  it('adds nothing where what rings can be predicted, and more where reflections are louder than the stroke', () => {
    const errorOf = (predictedDb: number, directDb = 0) =>
      withRoomError(strokes(5), { predictedDb, directDb })[0]!.levelSe;
    expect(errorOf(25)).toBe(0.3);
    expect(errorOf(10)).toBe(withRoomError(strokes(5), null)[0]!.levelSe);
    expect(errorOf(14.5)).toBeLessThan(errorOf(10));
    expect(errorOf(10, -7)).toBeGreaterThan(errorOf(10) + 0.1);
  });
});

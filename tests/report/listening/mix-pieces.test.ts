import { describe, expect, it } from 'vitest';
import { mixClicks } from '../../../src/report/listening/mix-clicks.ts';
import { mixPieces } from '../../../src/report/listening/mix-pieces.ts';
import type { Arrangement } from '../../../src/report/listening/piece.ts';

const sound = { samples: Float32Array.of(1, 2, 3, 4, 5, 6, 7, 8), sampleRate: 1 };
const piece = { from: 2, to: 4, at: 1, gain: 0.5, fadeIn: 0, fadeOut: 0 };
const arrangement: Arrangement = { pieces: [piece], clicks: [], length: 4, goesRound: false };

describe('mixPieces', () => {
  it('puts a piece in its place with its gain', () => {
    expect([...mixPieces(sound, arrangement, 0, 5)]).toEqual([0, 1.5, 2, 0, 0]);
    expect([...mixPieces(sound, arrangement, 2, 3)]).toEqual([2, 0, 0]);
  });

  it('goes round, also for pieces over the end of a round', () => {
    const round = { ...arrangement, goesRound: true };
    expect([...mixPieces(sound, round, 0, 8)]).toEqual([0, 1.5, 2, 0, 0, 1.5, 2, 0]);
    expect([...mixPieces(sound, { ...round, pieces: [{ ...piece, at: 3 }] }, 4, 4)]).toEqual([2, 0, 0, 1.5]);
    expect([...mixPieces(sound, round, 400_001, 2)]).toEqual([1.5, 2]);
  });

  it('fades so that two pieces that meet add up to the whole', () => {
    const pieces = [
      { from: 0, to: 4, at: 0, gain: 1, fadeIn: 0, fadeOut: 2 },
      { from: 4, to: 8, at: 4, gain: 1, fadeIn: 2, fadeOut: 0 },
    ];
    expect([...mixPieces(sound, { ...arrangement, pieces }, 0, 8)]).toEqual([...sound.samples]);
  });

  it('reads nothing where there is no sound', () => {
    const pieces = [
      { ...piece, from: -2, to: 1, at: 0 },
      { ...piece, from: 7, to: 12, at: 4 },
    ];
    expect([...mixPieces(sound, { ...arrangement, pieces }, 0, 8)]).toEqual([0, 0, 0.5, 0, 4, 0, 0, 0]);
  });

  it('is the same in blocks as in one', () => {
    const plan = { ...arrangement, goesRound: true, length: 3, clicks: [{ at: 1, strong: true }] };
    for (const mix of [
      (first: number, count: number) => mixPieces(sound, plan, first, count),
      (first: number, count: number) => mixClicks({ ...plan, length: 0.1 }, 8000, first, count),
    ]) {
      expect([0, 7, 14].flatMap((first) => [...mix(first, 7)])).toEqual([...mix(0, 21)]);
    }
  });
});

describe('mixClicks', () => {
  it('begins a tone at each click, the strong one higher', () => {
    const clicks = [
      { at: 0.1, strong: true },
      { at: 0.3, strong: false },
    ];
    const out = mixClicks({ pieces: [], clicks, length: 0.5, goesRound: false }, 8000, 0, 4000);
    expect(out.slice(0, 801).every((sample) => sample === 0)).toBe(true);
    expect(out[801]).toBeGreaterThan(0.1);
    expect(out.slice(1300, 2401).every((sample) => sample === 0)).toBe(true);
    const crossings = (from: number) =>
      out
        .slice(from, from + 400)
        .reduce((n, s, i, all) => n + (i > 0 && s >= 0 && all[i - 1]! < 0 ? 1 : 0), 0);
    expect(crossings(800)).toBeGreaterThan(crossings(2400));
  });
});

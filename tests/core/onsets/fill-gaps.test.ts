import { describe, expect, it } from 'vitest';
import { fillGaps } from '../../../src/core/onsets/fill-gaps.ts';
import type { RiseCandidate } from '../../../src/core/onsets/rise-candidate.ts';
import { heardSound } from '../../support/heard-sound.ts';

const frameRate = 1000;
const interval = 0.15;

const empty = [0, 0, 0, 0, 0];
const faintAt = (time: number, evidence = 8): RiseCandidate => ({
  frame: Math.round(time * frameRate),
  evidence,
  before: empty,
  attack: empty,
  body: empty,
  after: empty,
});

/** A row of even strokes, accents of −10 dB and taps of −26 dB, without those missing. */
const row = (missing: readonly number[], count = 48) =>
  Array.from({ length: count }, (_, i) => i)
    .filter((i) => !missing.includes(i))
    .map((i) => heardSound(1 + i * interval, { levelDb: i % 3 === 0 ? -10 : -26 }));

const timeOf = (i: number) => 1 + i * interval;

/** Looks again, each faint rise a stroke of `levelDb` where it is. */
const filled = (
  sounds: ReturnType<typeof row>,
  faint: readonly RiseCandidate[],
  levelDb: number | null = -27,
) =>
  fillGaps(sounds, faint, frameRate, ({ frame }) =>
    levelDb === null ? null : heardSound(frame / frameRate, { levelDb }),
  );

const added = (before: readonly { time: number }[], after: readonly { time: number }[]) =>
  after.map(({ time }) => time).filter((time) => !before.some((stroke) => stroke.time === time));

describe('fillGaps', () => {
  it('finds the stroke that is due, at its own time', () => {
    const sounds = row([20]);
    const found = filled(sounds, [faintAt(timeOf(20) + 0.006)]);
    expect(added(sounds, found)).toEqual([timeOf(20) + 0.006]);
    expect(found.map(({ time }) => time)).toEqual(found.map(({ time }) => time).toSorted((a, b) => a - b));
  });

  it('finds two and three in a row', () => {
    const sounds = row([20, 21, 30, 31, 32]);
    const faint = [20, 21, 30, 31, 32].map((i) => faintAt(timeOf(i)));
    expect(added(sounds, filled(sounds, faint))).toHaveLength(5);
  });

  it('takes the clearest of several rises', () => {
    const sounds = row([20]);
    const faint = [
      faintAt(timeOf(20) - 0.01, 7),
      faintAt(timeOf(20) + 0.004, 11),
      faintAt(timeOf(20) + 0.02, 9),
    ];
    expect(added(sounds, filled(sounds, faint))).toEqual([timeOf(20) + 0.004]);
  });

  it.each<[string, readonly number[], readonly RiseCandidate[], number | null]>([
    ['without a rise', [20], [], -27],
    ['with a rise far from where a stroke is due', [20], [faintAt(timeOf(20) + 0.05)], -27],
    ['with a rise that turns out to be none', [20], [faintAt(timeOf(20))], null],
    ['with something far softer than the softest stroke', [20], [faintAt(timeOf(20))], -40],
    ['with something far louder than the loudest', [20], [faintAt(timeOf(20))], -2],
    [
      'in a rest of five strokes',
      [20, 21, 22, 23, 24],
      [20, 21, 22, 23, 24].map((i) => faintAt(timeOf(i))),
      -27,
    ],
    ['where no stroke is missing', [], [faintAt(timeOf(20) + 0.07)], -27],
    ['before the first and after the last', [], [faintAt(0.85), faintAt(timeOf(48))], -27],
  ])('invents nothing %s', (_, missing, faint, levelDb) => {
    const sounds = row(missing);
    expect(filled(sounds, faint, levelDb)).toEqual(sounds);
  });

  it('does not know a row from a few strokes', () => {
    const sounds = row([5], 9);
    expect(filled(sounds, [faintAt(timeOf(5))])).toEqual(sounds);
  });

  it('goes by the strokes and passes over other sounds', () => {
    const strokes = row([20]);
    const sounds = [...strokes, heardSound(timeOf(20) + 0.05, { sound: 'voice' })].sort(
      (a, b) => a.time - b.time,
    );
    const found = filled(sounds, [faintAt(timeOf(20))]);
    expect(added(sounds, found)).toEqual([timeOf(20)]);
    expect(found.filter(({ sound }) => sound === 'voice')).toHaveLength(1);
  });

  it('follows a row that gets faster', () => {
    const times = [1];
    for (let i = 0; i < 60; i++) times.push(times.at(-1)! + 0.25 * 0.985 ** i);
    const sounds = times.filter((_, i) => i !== 30).map((time) => heardSound(time));
    expect(added(sounds, filled(sounds, [faintAt(times[30]!)], -21))).toHaveLength(1);
  });
});

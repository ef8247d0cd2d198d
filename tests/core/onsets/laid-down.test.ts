import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { laidDown } from '../../../src/core/onsets/laid-down.ts';

/** Attacks at these intervals (s), each so much softer (dB) than the one before. */
function attacks(from: number, intervals: readonly number[], fallDb: number, levelDb = -20) {
  const times = [from];
  for (const interval of intervals) times.push(times.at(-1)! + interval);
  return times.map((time, i) => ({ time, levelDb: levelDb - i * fallDb }));
}

/** Intervals of a thing that keeps the share `restitution` of its speed at each bounce. */
const bouncing = (first: number, restitution: number, count: number) =>
  Array.from({ length: count }, (_, i) => first * restitution ** i);

const none = (count: number) => new Array<boolean>(count).fill(false);
const all = (count: number) => new Array<boolean>(count).fill(true);

describe('laidDown', () => {
  it.each([
    [0.25, 0.7, 8],
    [0.2, 0.6, 6],
    [0.3, 0.8, 12],
  ])('knows a thing bouncing to rest: first %f s, restitution %f', (first, restitution, count) => {
    const falling = attacks(3, bouncing(first, restitution, count), 3);
    expect(laidDown(falling)).toEqual(all(falling.length));
  });

  it.each<[string, readonly number[], number]>([
    ['even triplets', new Array(24).fill(0.12), 0],
    ['an even roll that dies away', new Array(24).fill(0.05), 1],
    ['a crescendo of even strokes', new Array(12).fill(0.06), -2],
    ['a ritardando', [0.1, 0.11, 0.12, 0.13, 0.14, 0.15], 2],
    [
      'a tempo that rises from 90 to 140 within two bars',
      Array.from({ length: 24 }, (_, i) => 0.222 * 0.982 ** i),
      0,
    ],
    ['a flam and its rest', [0.03, 0.4, 0.03, 0.4, 0.03], 0],
    ['a drag and its stroke', [0.035, 0.03, 0.3, 0.035, 0.03, 0.3], -3],
    ['intervals that halve: no bounce', [0.4, 0.15, 0.05, 0.015], 4],
  ])('takes %s for playing', (_, intervals, fallDb) => {
    const played = attacks(1, intervals, fallDb);
    expect(laidDown(played)).toEqual(none(played.length));
  });

  it('takes the scatter of a player for playing, whatever the seed', () => {
    for (let seed = 0; seed < 50; seed++) {
      const random = seeded(seed);
      const played = Array.from({ length: 120 }, (_, i) => ({
        time: 1 + i * 0.11 + random.normal(0, 0.006),
        levelDb: (i % 3 === 0 ? -10 : -26) + random.normal(0, 1.8),
      }));
      expect(laidDown(played)).toEqual(none(120));
    }
  });

  it('takes a burst whose strokes drew nearer by chance for playing', () => {
    const levels = [-14.2, -27.7, -30, -31.6, -28.5, -33.5, -32.3, -31.9, -31.4];
    const times = [6.461, 6.518, 6.585, 6.653, 6.711, 6.763, 6.821, 6.886, 6.943];
    expect(laidDown(times.map((time, i) => ({ time, levelDb: levels[i]! })))).toEqual(none(9));
  });

  it('takes hardly any burst for it', () => {
    const wrong = Array.from({ length: 1000 }, (_, seed) => {
      const random = seeded(seed);
      const burst = Array.from({ length: 72 }, (_, i) => ({
        time: 1 + 0.06 * i + 0.45 * Math.floor(i / 9) + random.normal(0, 0.006),
        levelDb: (i % 9 === 0 ? -15 : -31) + random.normal(0, 1.8),
      }));
      return laidDown(burst).some(Boolean);
    }).filter(Boolean).length;
    expect(wrong).toBeLessThanOrEqual(10);
  });

  it('leaves the strokes before it alone', () => {
    const played = attacks(0.5, new Array(12).fill(0.15), 0, -10);
    const falling = attacks(played.at(-1)!.time + 0.9, bouncing(0.22, 0.7, 8), 3);
    expect(laidDown([...played, ...falling])).toEqual([...none(13), ...all(9)]);
  });

  it('takes the echoes of the bounces with them', () => {
    const falling = attacks(1, bouncing(0.25, 0.7, 8), 3);
    const echoed = falling.flatMap(({ time, levelDb }) => [
      { time, levelDb },
      { time: time + 0.015, levelDb: levelDb - 15 },
    ]);
    expect(laidDown(echoed.sort((a, b) => a.time - b.time))).toEqual(all(18));
  });

  it.each([
    ['a stick', [-19, -26, -28, -27, -24, -34, -31], [0.137, 0.084, 0.061, 0.049, 0.034, 0.038]],
    ['another', [-18, -26, -22, -23, -28, -37, -30, -37], [0.156, 0.119, 0.093, 0.073, 0.058, 0.035, 0.026]],
    [
      'wood',
      [-23.1, -26, -25.8, -27.6, -27.4, -28.2, -38.6, -30],
      [0.136, 0.105, 0.076, 0.06, 0.039, 0.025, 0.018],
    ],
  ])('knows %s laid down in a room, levels and all', (_, levels, intervals) => {
    const fallen = attacks(20, intervals, 0).map(({ time }, i) => ({ time, levelDb: levels[i]! }));
    const before = [-31, -15, -30, -32].map((levelDb, i) => ({ time: 18.4 + 0.2 * i, levelDb }));
    expect(laidDown([...before, ...fallen])).toEqual([...none(4), ...all(fallen.length)]);
  });

  it('does not take strokes along when a faint noise falls between them', () => {
    const levels = [-15, -33, -31, -13, -53, -31, -25, -15];
    const times = [14.198, 14.386, 14.597, 14.782, 14.926, 14.988, 15.175, 15.385];
    expect(laidDown(times.map((time, i) => ({ time, levelDb: levels[i]! })))).toEqual(none(8));
  });

  it('bears few attacks', () => {
    expect(laidDown([])).toEqual([]);
    expect(laidDown(attacks(1, [], 0))).toEqual([false]);
    expect(laidDown(attacks(1, [0.1, 0.08], 3))).toEqual(none(3));
  });
});

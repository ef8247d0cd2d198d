import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { mergeWaves } from '../../../src/core/onsets/merge-waves.ts';
import { heardSound } from '../../support/heard-sound.ts';

const timesOf = (sounds: readonly { time: number }[]) => sounds.map(({ time }) => time);

/** Strokes with a second attack after each: at a lag (s) and a step (dB) that scatter by so much. */
function doubled(lag: number, lagSd: number, stepDb: number, stepSd: number, count = 30) {
  const random = seeded(lag);
  return Array.from({ length: count }, (_, i) => {
    const time = 1 + 0.2 * i + random.normal(0, 0.005);
    const levelDb = (i % 3 === 0 ? -10 : -26) + random.normal(0, 1.5);
    const after = time + lag + random.normal(0, lagSd);
    return [
      heardSound(time, { levelDb }),
      heardSound(after, { levelDb: levelDb + stepDb + random.normal(0, stepSd) }),
    ] as const;
  });
}

describe('mergeWaves', () => {
  it.each([
    [0.012, -6],
    [0.02, 2],
    [0.03, -10],
  ])('drops the second wave of a drum, %f s later and %f dB louder', (lag, stepDb) => {
    const waves = doubled(lag, 0.0002, stepDb, 1);
    expect(timesOf(mergeWaves(waves.flat()))).toEqual(timesOf(waves.map(([first]) => first)));
  });

  it('keeps flams: grace notes scatter', () => {
    for (const lag of [0.022, 0.03]) {
      const flams = doubled(lag, 0.004, 6, 1.5).flat();
      const kept = mergeWaves(flams);
      expect(kept.length).toBeGreaterThanOrEqual(0.9 * flams.length);
    }
  });

  it('keeps drags whose inner lag lies near the longest looked at', () => {
    const drags = doubled(0.035, 0.003, 0, 1).flat();
    expect(mergeWaves(drags).length).toBeGreaterThanOrEqual(0.98 * drags.length);
  });

  it('keeps the stroke after a grace note, though four of sixteen lags agree', () => {
    const lags = [22, 22.3, 22.5, 22.8, 19, 20.2, 25, 26.5, 27.6, 17.8, 24.1, 29.4, 18.6, 26, 28.3, 20.8];
    const flams = lags.flatMap((lag, i) => [
      heardSound(1 + i / 4, { levelDb: -34 }),
      heardSound(1 + i / 4 + lag / 1000, { levelDb: -16 }),
    ]);
    expect(mergeWaves(flams)).toHaveLength(flams.length);
  });

  it('keeps a few alike: too few to be a habit of the drum', () => {
    const [few, rest] = [doubled(0.02, 0.0001, -5, 0.5, 2), doubled(0.1, 0, -5, 0).map(([first]) => first)];
    const sounds = [...few.flat(), ...rest.slice(2)];
    expect(mergeWaves(sounds)).toEqual(sounds);
  });

  it('keeps an even roll, and strokes of a tempo', () => {
    for (const interval of [0.05, 0.06, 0.11, 0.2]) {
      const even = Array.from({ length: 40 }, (_, i) => heardSound(1 + interval * i));
      expect(mergeWaves(even)).toEqual(even);
    }
  });

  it('bears nothing', () => {
    expect(mergeWaves([])).toEqual([]);
  });
});

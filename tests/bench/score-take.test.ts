import { describe, expect, it } from 'vitest';
import { perfectPlayer } from '../../fixtures/generator/player.ts';
import type { TruthStroke } from '../../fixtures/generator/take-truth.ts';
import type { BenchTake } from './bench-take.ts';
import { poolScores } from './pool-scores.ts';
import { constantOffset, scoreTake } from './score-take.ts';

const stroke = (time: number, accent = false, role: TruthStroke['role'] = 'take'): TruthStroke => ({
  ...{ time, accent, role, levelDb: -20, peakDb: -20, slot: null, segment: null, hand: 'R', grace: false },
});

function takeOf(strokes: readonly TruthStroke[]): BenchTake {
  const truth = {
    ...{ sampleRate: 48000, duration: 60, bpm: 60, strokes, clicks: [], otherSounds: [], segments: [] },
    player: perfectPlayer,
  };
  const dryLevels = strokes.map(() => -20);
  return { name: 'take', group: 'group', samples: new Float32Array(0), sampleRate: 48000, truth, dryLevels };
}

const every = Array.from({ length: 12 }, (_, i) => stroke(1 + i, i % 3 === 0));
const late = every.map(({ time }) => ({ time: time + 0.0071, levelDb: -23 }));

describe('scoreTake', () => {
  it('takes off what is constant', () => {
    const score = scoreTake(takeOf(every), late, [], 0.04);
    expect(score).toMatchObject({ strokes: 12, heard: 12, within10Ms: 12, within3Ms: 12, missed: [] });
    expect(score.offset).toBeCloseTo(0.0071, 9);
    expect(score.levelOffset).toBeCloseTo(-3, 9);
    expect(Math.max(...score.errors.map(({ time }) => Math.abs(time)))).toBeLessThan(1e-9);
  });

  it('counts what is missed, what is too much and what is wide of the mark', () => {
    const heard = [...late.slice(0, 5), { time: 6.05 }, { time: 7.0071 + 0.006 }, ...late.slice(7)];
    const score = scoreTake(takeOf(every), heard, [], 0.04);
    expect(score).toMatchObject({ within10Ms: 11, within3Ms: 10, missed: [5], surplus: [5] });
    const { f10, f3, recall } = poolScores([score]);
    expect([f10, f3, recall].map((value) => value * 12)).toEqual(
      [11, 10, 11].map((n) => expect.closeTo(n, 9)),
    );
  });

  it('holds neither bounces nor forgiven sounds against anyone', () => {
    const take = takeOf([...every.slice(0, 1), stroke(1.03, false, 'bounce'), ...every.slice(1)]);
    const heard = [late[0]!, { time: 1.0371 }, ...late.slice(1), { time: 20.0071 }];
    expect(scoreTake(take, late, [], 0.04).missed).toEqual([]);
    expect(scoreTake(take, heard, [], 0.04).surplus).toEqual([13]);
    expect(scoreTake(take, heard, [20], 0.04).surplus).toEqual([]);
  });
});

it('constantOffset goes with the many, not with the mean', () => {
  const reference = every.map(({ time }) => time);
  const estimates = reference.map((time, i) => time + (i < 8 ? -0.004 : 0.02 + 0.002 * i));
  expect(constantOffset(reference, estimates, 0.04)).toBeCloseTo(-0.004, 9);
  expect(constantOffset(reference, [], 0.04)).toBe(0);
});

it('does not excuse a delay where none is due', () => {
  const score = scoreTake(takeOf(every), late);
  expect(score).toMatchObject({ offset: 0, within10Ms: 12, within3Ms: 0 });
});

describe('poolScores', () => {
  it('finds bias between accents and taps in each take', () => {
    const heard = Array.from({ length: 30 }, (_, i) => stroke(1 + i, i % 3 === 0)).map(
      ({ time, accent }) => ({
        time: time + (accent ? 0.001 : 0),
        levelDb: accent ? -19 : -20,
        timeSe: 0.0005,
        levelSe: 0.25,
      }),
    );
    const take = takeOf(heard.map(({ levelDb }, i) => stroke(1 + i, levelDb === -19)));
    const pool = poolScores([scoreTake(take, heard, [], 0.04)]);
    expect(pool.accentBiasMs).toBeCloseTo(1, 6);
    expect(pool.ratioBiasDb).toBeCloseTo(1, 6);
    expect(pool.levelBeyond3).toBeCloseTo(1 / 3, 6);
    expect(pool.timeBeyond3).toBe(0);
    expect(pool.f10).toBe(1);
  });
});

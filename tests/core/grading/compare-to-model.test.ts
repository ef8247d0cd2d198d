import { describe, expect, it } from 'vitest';
import {
  compareToModel,
  leastBand,
  linesInModel,
  type ModelComparison,
  standingOf,
} from '../../../src/core/grading/compare-to-model.ts';
import { modelFromTake, type PlayedModel } from '../../../src/core/grading/played-model.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { coverageBounds } from '../measures/coverage.ts';
import { players, type Take } from '../measures/simulated-performance.ts';
import { simulatedResult } from './simulated-result.ts';

const triplets = 'tempo: 110\n>RLR >LRL ; times: 6';
const moving = 'tempo: 110\n>RLR R>LR LR>L RLR ; times: 6';
const partialMs = 60_000 / 110 / 3;
/** The teacher's own habits, s and dB, and what the student does on top of them. */
const teachersLate = [0.004, 0, -0.003];
const studentsLate = [0, -0.006, 0.009];
const levelSd = (slot: { accent: boolean }) => (slot.accent ? 1.2 : 1.8);
const teacher = {
  habit: (slot: { partial: number }) => teachersLate[slot.partial - 1]!,
  level: (slot: { accent: boolean }) => (slot.accent ? -12 : -26),
  levelSd,
  levelMemory: 0.3,
};
const student = {
  ...teacher,
  habit: (slot: { partial: number }) => teachersLate[slot.partial - 1]! + studentsLate[slot.partial - 1]!,
  // Another microphone, 9 dB less of everything, and accents 3 dB lower besides.
  level: (slot: { accent: boolean }) => (slot.accent ? -24 : -35),
};

function modelOf(result: TakeResult): PlayedModel {
  const made = modelFromTake(result);
  if (!made.ok) throw new Error(made.reason.code);
  return made.model;
}
const play = (take: Partial<Take> & Pick<Take, 'sheet' | 'seed'>) =>
  simulatedResult({ player: players['middling corrector']!, ...take });

function truthOf({ id, scope }: ModelComparison['measures'][number]): number {
  if (id === 'model-level') return scope.accent ? -3 : 0;
  const mean = studentsLate.reduce((sum, s) => sum + s, 0) / 3;
  return (100_000 * (studentsLate[scope.partial - 1]! - mean)) / partialMs;
}

describe('compareToModel', () => {
  it.each([
    ['independent jitter', triplets],
    ['slow corrector', moving],
    ['no click', triplets],
  ])('finds what the student does otherwise than the teacher, the %s playing %s', (name, sheet) => {
    const runs = 60;
    const player = players[name]!;
    let held = 0;
    let all = 0;
    let bias = 0;
    for (let seed = 1; seed <= runs; seed++) {
      const model = modelOf(play({ sheet, seed, player, ...teacher }));
      const { measures } = compareToModel(play({ sheet, seed: seed + 5000, player, ...student }), model)!;
      for (const one of measures) {
        if (one.outcome.state !== 'measured') throw new Error(JSON.stringify(one));
        const { value, low, high } = one.outcome;
        const truth = truthOf(one);
        all++;
        bias += value - truth;
        if (low <= truth && truth <= high) held++;
      }
    }
    expect(held / all).toBeGreaterThan(coverageBounds(runs).least);
    expect(Math.abs(bias / all)).toBeLessThan(0.2);
  });

  it.each(Object.keys(players))('finds the same player alike: %s', (name) => {
    const player = players[name]!;
    let inside = 0;
    let apart = 0;
    let all = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const model = modelOf(play({ sheet: moving, seed, player, ...teacher }));
      const { measures } = compareToModel(
        play({ sheet: moving, seed: seed + 900, player, ...teacher }),
        model,
      )!;
      for (const { outcome, band, standing } of measures) {
        if (outcome.state !== 'measured') throw new Error(outcome.state);
        all++;
        if (Math.abs(outcome.value) <= band) inside++;
        if (standing === 'above' || standing === 'below') apart++;
      }
    }
    expect(inside / all).toBeGreaterThanOrEqual(0.92);
    expect(apart / all).toBeLessThanOrEqual(0.01);
  });

  it('says so where the student is clearly apart, in a long take', () => {
    const sheet = 'tempo: 110\n>RLR >LRL ; times: 30';
    const model = modelOf(play({ sheet, seed: 1, ...teacher }));
    const far = { ...student, habit: (slot: { partial: number }) => (slot.partial === 3 ? 0.03 : 0) };
    const { measures } = compareToModel(play({ sheet, seed: 2, ...far }), model)!;
    const standing = (id: string, partial: number) =>
      measures.find((one) => one.id === id && one.scope.partial === partial)!.standing;
    expect(standing('model-placement', 3)).toBe('above');
    expect(standing('model-placement', 2)).toBe('below');
    expect(standing('model-level', 1)).toBe('below');
    expect(standing('model-level', 2)).toBe('alike');
  });

  it('holds a take at another tempo against the model, in shares of a partial', () => {
    const model = modelOf(play({ sheet: triplets, seed: 1, ...teacher }));
    const slower = play({ sheet: triplets.replace('110', '80'), seed: 2, ...teacher });
    const { measures } = compareToModel(slower, model)!;
    for (const { standing } of measures) expect(['alike', 'not-told']).toContain(standing);
  });

  it('compares the lines that both have, wherever they stand', () => {
    const model = modelOf(play({ sheet: 'tempo: 110\nR>LR L>RL ; times: 6\n>RLR >LRL ; times: 6', seed: 1 }));
    const result = play({ sheet: 'tempo: 110\n>RLR >LRL ; times: 6\nRL>R LR>L ; times: 6', seed: 2 });
    const found = compareToModel(result, model)!;
    expect(found.linesLeftOut).toBe(1);
    expect(new Set(found.measures.map(({ scope }) => scope.line))).toEqual(new Set([0]));
    expect(linesInModel(result.sheet.lines, model)).toEqual([0]);
    expect(compareToModel(play({ sheet: 'tempo: 110\nRRL RRL ; times: 6', seed: 1 }), model)).toBeNull();
  });

  it('refuses a take too short to compare, and levels without taps', () => {
    const model = modelOf(play({ sheet: triplets, seed: 1 }));
    const short = compareToModel(play({ sheet: 'tempo: 110\n>RLR >LRL ; times: 2', seed: 2 }), model)!;
    for (const { outcome, standing } of short.measures) {
      expect(outcome).toMatchObject({ reason: { code: 'too-few-repeats-for-model' } });
      expect(standing).toBe('not-told');
    }
    const loud = 'tempo: 110\n>R>L>R >L>R>L ; times: 8';
    const { measures } = compareToModel(
      play({ sheet: loud, seed: 2 }),
      modelOf(play({ sheet: loud, seed: 1 })),
    )!;
    for (const { id, outcome } of measures)
      expect(outcome.state).toBe(id === 'model-level' ? 'not-applicable' : 'measured');
  });
});

describe('standingOf', () => {
  const between = (low: number, high: number) =>
    standingOf(
      { state: 'measured', value: (low + high) / 2, low, high, strokes: 9, pointsAt: [] },
      leastBand.placement,
    );
  it('goes by the whole interval', () => {
    expect([between(-1, 2), between(2.6, 4), between(-9, -2.6), between(1, 3)]).toEqual([
      'alike',
      'above',
      'below',
      'not-told',
    ]);
  });
});

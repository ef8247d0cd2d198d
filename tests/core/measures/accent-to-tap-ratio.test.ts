import { describe, expect, it } from 'vitest';
import { accentToTapRatio } from '../../../src/core/measures/accent-to-tap-ratio.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const play = (repeats: number, rest = {}) =>
  simulatedPerformance({ sheet: `tempo: 110\n>RLR >LRL; x${repeats}`, seed: 1, player: machine, ...rest });

describe('accent-to-tap-ratio', () => {
  it('is the difference of the levels, wherever the microphone stands', () => {
    for (const lift of [0, -20]) {
      const take = play(24, {
        levelSd: () => 0,
        levelSe: 0,
        level: (s: { accent: boolean }) => (s.accent ? -15 : -26.5) + lift,
      });
      expect(figureOf(accentToTapRatio, take).value).toBeCloseTo(11.5, 10);
    }
  });

  it.each([
    [8, {}],
    [24, {}],
    [24, { hand: 'L' }],
    [80, {}],
  ] as const)('of %i beats twice over for %j is met, its interval holds it', (repeats, scope) => {
    const runs = 300;
    const { share, mean } = coverage(
      runs,
      (seed) =>
        play(repeats, {
          seed,
          levelMemory: 0.3,
          levelSd: (s: { accent: boolean }) => (s.accent ? 1.2 : 1.8),
        }),
      12,
      accentToTapRatio,
      scope,
    );
    const { least, most } = coverageBounds(runs);
    expect(Math.abs(mean - 12)).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });

  it('tells a hand with little contrast from one with much', () => {
    const take = play(24, {
      level: (s: { accent: boolean; hand: string }) => (s.accent ? -16 : s.hand === 'L' ? -22 : -30),
    });
    expect(figureOf(accentToTapRatio, take, { hand: 'L' }).high).toBeLessThan(
      figureOf(accentToTapRatio, take, { hand: 'R' }).low,
    );
  });

  it('is told for each line where there are several', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 110\n>RLR >LRL; x8\nR>LR L>RL; x8',
      seed: 1,
      player: machine,
      levelSd: () => 0,
      levelSe: 0,
      level: (s) => (s.accent ? -16 : s.line === 0 ? -26 : -21),
    });
    expect(figureOf(accentToTapRatio, take, { line: 0 }).value).toBeCloseTo(10, 10);
    expect(figureOf(accentToTapRatio, take, { line: 1 }).value).toBeCloseTo(5, 10);
    expect(accentToTapRatio.compute(play(24)).map((r) => r.scope)).toEqual([
      {},
      { hand: 'R' },
      { hand: 'L' },
    ]);
  });

  it('needs six of each, and accents and taps in the exercise', () => {
    expect(outcomeOf(accentToTapRatio, play(2))).toEqual({
      state: 'not-measurable',
      reason: { code: 'too-few-accents-or-taps', facts: { accents: 4, taps: 8, needed: 6 } },
    });
    const plain = (text: string) =>
      outcomeOf(accentToTapRatio, simulatedPerformance({ sheet: text, seed: 1, player: machine }));
    expect(plain('tempo: 110\nRLR LRL; x20')).toMatchObject({ reason: { code: 'no-accents' } });
    expect(plain('tempo: 110\n>R>L>R; x20')).toMatchObject({ reason: { code: 'no-taps' } });
  });
});

import { describe, expect, it } from 'vitest';
import type { Measure } from '../../../src/core/measures/measure.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

/** Hands and partials of different loudness: no part of the spread. */
const play = (repeats: number, seed: number, rest = {}) =>
  simulatedPerformance({
    sheet: `tempo: 110\n>RLR >LRL; x${repeats}`,
    seed,
    player: machine,
    level: (slot) => (slot.accent ? -18 : -30) + (slot.hand === 'L' ? 3 : 0) + slot.partial,
    ...rest,
  });

/** What holds for the spread of accents and of taps; `slip` is a stroke of that kind, `without` notation that has none. */
export function describeLevelSpread(measure: Measure, slip: number, without: string): void {
  describe(measure.id, () => {
    it.each([
      [8, {}],
      [24, {}],
      [24, { hand: 'R' }],
      [80, {}],
    ] as const)('at %i times two beats for %j is met, its interval holds it', (repeats, scope) => {
      const runs = 300;
      const { share, mean } = coverage(
        runs,
        (seed) => play(repeats, seed, { levelMemory: 0.3 }),
        1.5,
        measure,
        scope,
      );
      const { least, most } = coverageBounds(runs);
      expect(Math.abs(mean - 1.5)).toBeLessThan(repeats === 8 ? 0.2 : 0.1);
      expect(share).toBeGreaterThan(least);
      expect(share).toBeLessThan(most);
    });

    it('takes the error of measuring levels out', () => {
      const { mean } = coverage(100, (seed) => play(40, seed, { levelSe: 0.6 }), 1.5, measure);
      expect(Math.abs(mean - 1.5)).toBeLessThan(0.06);
    });

    it('refuses where levels are measured as coarsely as they spread', () => {
      expect(outcomeOf(measure, play(24, 1, { levelSe: 1, levelSd: () => 0.3 }))).toMatchObject({
        state: 'not-measurable',
        reason: { code: 'found-too-coarsely' },
      });
    });

    it('leaves a slip out and points at it', () => {
      const level = (slot: { accent: boolean; index: number }) =>
        (slot.accent ? -18 : -30) + (slot.index === slip ? 15 : 0);
      const figure = figureOf(measure, play(24, 1, { level }));
      expect(figure.value).toBeLessThan(2);
      expect(figure.pointsAt[0]).toBe(slip);
    });

    it('does not exist without such strokes', () => {
      const sheet = `tempo: 110\n${without}; x20`;
      expect(outcomeOf(measure, simulatedPerformance({ sheet, seed: 1, player: machine }))).toMatchObject({
        state: 'not-applicable',
      });
    });
  });
}

import { describe, expect, it } from 'vitest';
import { measures, measureTake } from '../../../src/core/measures/index.ts';
import { measureWithParts, partsOf } from '../../../src/core/measures/parts-of-measure.ts';
import type { Performance } from '../../../src/core/measures/performance.ts';
import type { Scope } from '../../../src/core/result/take-result.ts';
import { findMeasure } from '../../../src/core/scoring/find-measure.ts';
import { takeOfLevels } from './made-levels.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const sheet = '>RLR >LRL >RLR >LRL; x8\nR>LR L>RL R>LR L>RL; x8';

function figure(take: Performance, id: string, scope: Scope) {
  const outcome = findMeasure(measureTake(take), id, scope)?.outcome;
  if (outcome?.state !== 'measured') throw new Error(`${id} ${JSON.stringify(scope)} isn't measured`);
  return outcome;
}

describe('measureWithParts', () => {
  it('gives each line, hand, partial and repeat what was played there', () => {
    // Accents stand 8 and 14 dB above taps by line; the right hand's taps scatter by 2 dB, the left's by 0.5.
    const take = takeOfLevels(sheet, (slot) => (slot.accent ? (slot.line === 0 ? -22 : -16) : -30), {
      levelSd: (slot) => (slot.accent ? 0.5 : slot.hand === 'R' ? 2 : 0.5),
    });
    expect(figure(take, 'accent-to-tap-ratio', { line: 0 }).value).toBeCloseTo(8, 0);
    expect(figure(take, 'accent-to-tap-ratio', { line: 1 }).value).toBeCloseTo(14, 0);
    const [right, left] = (['R', 'L'] as const).map((hand) => figure(take, 'tap-spread', { hand }));
    expect(right!.low).toBeGreaterThan(left!.high);
  });

  it('tells the repeat in which accents were lost', () => {
    const take = takeOfLevels('>RLR >LRL >RLR >LRL; x8', ({ accent, repeat }) =>
      accent && repeat !== 5 ? -16 : -30,
    );
    expect(figure(take, 'lost-accents', { repeat: 5 }).value).toBe(100);
    expect(figure(take, 'lost-accents', { repeat: 4 }).value).toBe(0);
    expect(figure(take, 'lost-accents', {}).value).toBeCloseTo(12.5, 9);
  });

  it("fits a line's habits to the line alone", () => {
    const take = simulatedPerformance({
      sheet: `tempo: 100\n${sheet}`,
      seed: 1,
      player: machine,
      habit: ({ line, partial }) => (line === 1 && partial === 2 ? 0.009 : 0),
      timeSe: 0,
    });
    // The mean of a beat is a third of 9 ms late, so that the second partial lies 6 ms behind it.
    expect(figure(take, 'placement', { line: 1 }).value).toBeCloseTo(6, 6);
    expect(figure(take, 'placement', { line: 0 }).value).toBeCloseTo(0, 6);
  });

  it('counts missed strokes where they were missed', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL >RLR >LRL >RLR >LRL >RLR >LRL; x4',
      seed: 1,
      player: machine,
      change: (alignment) => {
        const gone = new Set([26, 29, 32]);
        const matches = alignment.matches.filter(({ slot }) => !gone.has(slot));
        return { ...alignment, matches, missed: [...gone] };
      },
    });
    expect(figure(take, 'missed', { repeat: 1 }).value).toBeCloseTo(300 / 24, 9);
    expect(figure(take, 'missed', { repeat: 0 }).value).toBe(0);
    expect(figure(take, 'missed', { partial: 3 }).value).toBeCloseTo(300 / 32, 9);
  });

  it('puts an extra stroke on the repeat that it was played in, and on no other', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL >RLR >LRL >RLR >LRL >RLR >LRL; x4',
      seed: 1,
      player: machine,
      change: (alignment) => {
        const matches = alignment.matches.filter(({ slot }) => slot !== 60);
        return { ...alignment, matches, missed: [60], extra: [60] };
      },
    });
    const shares = [0, 1, 2, 3].map((repeat) => figure(take, 'extra', { repeat }).value);
    expect(shares.map((share) => (24 * share) / 100)).toEqual([0, 0, expect.closeTo(1, 9), 0]);
  });

  it('leaves parts out that a measure does not apply to, and short repeats', () => {
    const take = takeOfLevels('>RLR >LRL; x20', ({ accent }) => (accent ? -18 : -30));
    const parts = partsOf(take);
    expect(parts.map(({ scope }) => JSON.stringify(scope))).toEqual([
      '{"hand":"R"}',
      '{"hand":"L"}',
      '{"partial":1}',
      '{"partial":2}',
      '{"partial":3}',
    ]);
    const tapSpread = measures.find(({ id }) => id === 'tap-spread')!;
    const scopes = measureWithParts(tapSpread, take, parts).map(({ scope }) => JSON.stringify(scope));
    expect(scopes).toEqual(['{}', '{"hand":"R"}', '{"hand":"L"}', '{"partial":2}', '{"partial":3}']);
  });

  it('never asks the timing of a part that has none', () => {
    const take = takeOfLevels(sheet, ({ accent }) => (accent ? -18 : -30));
    for (const { id, scope, outcome } of measureTake(take)) {
      if (outcome.state === 'not-measurable') {
        expect(outcome.reason.code, `${id} ${JSON.stringify(scope)}`).not.toBe('too-broken-up');
      }
    }
  });
});

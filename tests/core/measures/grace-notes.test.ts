import { describe, expect, it } from 'vitest';
import { graceNotes } from '../../../src/core/measures/grace-notes.ts';
import { figureOf, outcomeOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const sheet = 'tempo: 90\nlR>LR rL>RL; x10';
const play = (isLeftOut: (slot: number) => boolean) =>
  simulatedPerformance({
    sheet,
    seed: 1,
    player: machine,
    change: (alignment) => ({
      ...alignment,
      matches: alignment.matches.filter(({ slot }) => !isLeftOut(slot)),
      missed: alignment.matches.map(({ slot }) => slot).filter(isLeftOut),
    }),
  });

describe('grace-notes', () => {
  it('are all heard', () => {
    expect(
      figureOf(
        graceNotes,
        play(() => false),
      ),
    ).toMatchObject({ value: 100, strokes: 20, pointsAt: [] });
  });

  it('are counted where they are missing, each told by its main stroke', () => {
    // Slots run grace, main, tap, tap, four a beat: the first five grace notes are left out.
    const take = play((slot) => slot % 4 === 0 && slot < 20);
    const figure = figureOf(graceNotes, take);
    expect(figure.value).toBeCloseTo(75, 9);
    expect(figure.low).toBeLessThan(75);
    expect(figure.high).toBeGreaterThan(75);
    expect(figure.pointsAt).toEqual([1, 5, 9, 13, 17]);
  });

  it('do not exist where none is written', () => {
    const plain = simulatedPerformance({ sheet: 'tempo: 90\n>RLR; x20', seed: 1, player: machine });
    expect(outcomeOf(graceNotes, plain)).toMatchObject({ reason: { code: 'no-grace-notes' } });
  });
});

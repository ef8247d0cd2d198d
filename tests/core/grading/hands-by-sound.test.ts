import { describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../../fixtures/generator/player.ts';
import { readSheet } from '../../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { plainTake, type TakeSpec } from '../../../fixtures/generator/take-spec.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { floatSource } from '../../support/float-source.ts';

const { sheet, slots } = readSheet('tempo: 100\n>RLR >LRL ; times: 16\n');
const graded = (change: Partial<TakeSpec>) => {
  const { samples, sampleRate } = renderTake({
    ...plainTake,
    player: practisedPlayer,
    sampleRate: 44100,
    bpm: 100,
    slots,
    ...change,
  });
  return gradeTake(floatSource(sampleRate, samples), sheet);
};

describe('hands by their sound', () => {
  it('are confirmed where the left stick is duller', () => {
    const { hands, segments } = graded({ leftTiltDb: -2, seed: 1 });
    expect(hands).toBe('confirmed-by-sound');
    expect(segments.map((s) => s.leadSwapped)).toEqual([false]);
  });

  it('stay as written where both sound alike', () => {
    for (const seed of [1, 2, 3, 4]) expect(graded({ leftTiltDb: 0, seed }).hands).toBe('as-written');
  });

  it('are found swapped from a stop on, and the strokes carry the hand that played them', () => {
    const slot = 60;
    const { hands, segments, strokes } = graded({
      leftTiltDb: -2,
      seed: 2,
      incidents: [
        { kind: 'swap-hands', slot },
        { kind: 'pause', slot, seconds: 2 },
      ],
    });
    expect(hands).toBe('confirmed-by-sound');
    // Two runs: the longer one (60 of 96 strokes) counts as written.
    expect(segments.map(({ began, leadSwapped }) => [began, leadSwapped])).toEqual([
      ['start', false],
      ['restart', true],
    ]);
    expect(strokes.hand[0]).toBe(slots[0]!.hand);
    expect(strokes.hand[slot]).not.toBe(slots[slot]!.hand);
  });
});

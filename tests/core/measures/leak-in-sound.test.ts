import { describe, expect, it } from 'vitest';
import { perfectPlayer } from '../../../fixtures/generator/player.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { rooms } from '../../../fixtures/generator/rooms.ts';
import { plainTake, type TakeSpec } from '../../../fixtures/generator/take-spec.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { floatSource } from '../../support/float-source.ts';

const parsed = parseSheet('tempo: 110\n>RLR >LRL; x24');
if (!parsed.ok) throw new Error('sheet');
const { sheet } = parsed;

/** What is heard of even taps after an accent less what was played of them, dB. */
function leakHeard(change: Partial<TakeSpec>): number | string {
  const player = { ...perfectPlayer, accentDb: -12, tapDb: -24 };
  const { samples, sampleRate, truth } = renderTake({
    ...plainTake,
    slots: layOut(sheet),
    bpm: 110,
    player,
    ...change,
  });
  const result = gradeTake(floatSource(sampleRate, samples), sheet);
  const found = result.measures.find(({ id }) => id === 'after-accent-leak')!.outcome;
  if (found.state !== 'measured') return found.reason.code;
  const level = (partial: number) => {
    const own = truth.strokes.filter(
      ({ slot, accent }) => !accent && slot !== null && slot % 3 === partial - 1,
    );
    return own.reduce((sum, s) => sum + s.levelDb, 0) / own.length;
  };
  return found.value - (level(2) - level(3));
}

describe('after-accent-leak in sound', () => {
  it.each([
    ['a dry pad', {}],
    ['a pad in a room', { room: rooms[1]! }],
    ['a pad in another room', { room: rooms[3]! }],
    ['a snare', { kind: 'snare' as const }],
  ])('of even taps on %s is nothing, within 0.3 dB, over six takes', (_, change) => {
    // Strokes of one strength differ by themselves, so that one take alone says little.
    const leaks = [1, 2, 3, 4, 5, 6].map((seed) => Number(leakHeard({ ...change, seed })));
    const leak = leaks.reduce((sum, one) => sum + one, 0) / leaks.length;
    expect(Math.abs(leak)).toBeLessThan(0.3);
  });

  it.each([
    ['a bare room', { room: rooms[4]! }],
    ['a hall', { room: rooms[5]! }],
  ])('in %s is refused rather than made of echo', (_, change) => {
    expect(leakHeard(change)).toBe('accent-still-sounding');
  });
});

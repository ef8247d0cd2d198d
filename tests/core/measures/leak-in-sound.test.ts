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

/** What is read of taps right after an accent, dB, where accents are so much louder than even taps; or the refusal. */
function leakRead(change: Partial<TakeSpec>, accentsAboveDb: number): number | string {
  const player = { ...perfectPlayer, accentDb: -24 + accentsAboveDb, tapDb: -24 };
  const spec = { ...plainTake, slots: layOut(sheet), bpm: 110, player, ...change };
  const { samples, sampleRate } = renderTake(spec);
  const result = gradeTake(floatSource(sampleRate, samples), sheet);
  const found = result.measures.find(({ id }) => id === 'after-accent-leak')!.outcome;
  return found.state === 'measured' ? found.value : found.reason.code;
}

/*
 * No two strokes of one strength sound alike: the even taps of one take differ by chance, 0.3 dB from place to place.
 * The same strokes are therefore played twice, with accents 12 dB above the taps and with none: what the two readings
 * differ by is what the accents leave in the taps after them.
 */
describe('after-accent-leak in sound', () => {
  it.each([
    ['a dry pad', {}],
    ['a pad in a room', { room: rooms[1]! }],
    ['a snare', { kind: 'snare' as const }],
  ])('on %s takes nothing from the accents, within 0.3 dB in every take', (_, change) => {
    const left = [1, 2, 3].map(
      (seed) => Number(leakRead({ ...change, seed }, 12)) - Number(leakRead({ ...change, seed }, 0)),
    );
    for (const one of left) expect(Math.abs(one), left.join(' ')).toBeLessThan(0.3);
  });

  it.each([
    ['a room heard from afar', { room: rooms[3]! }],
    ['a bare room', { room: rooms[4]! }],
    ['a hall', { room: rooms[5]! }],
  ])('in %s is refused rather than made of echo', (_, change) => {
    expect(leakRead(change, 12)).toBe('accent-still-sounding');
  });
});

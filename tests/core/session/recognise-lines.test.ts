import { describe, expect, it } from 'vitest';
import { recogniseLines } from '../../../src/core/session/recognise-lines.ts';
import { line, sheetOf } from '../alignment/made-sheet.ts';
import { simulateTake } from '../alignment/simulated-take.ts';

const lines = [
  line('>RLR >LRL >RLR >LRL', { repeats: 2 }),
  line('R>LR L>RL R>LR L>RL', { repeats: 2 }),
  line('>R>RL >L>RR >L>LR >R>LL', { repeats: 2, bpm: 90 }),
  line('>RLRL RLR>L RL>RL R>LRL', { repeats: 2 }),
];
const sheet = sheetOf(...lines);
const found = (order: readonly number[], seed: number) => {
  const played = sheetOf(
    ...order.map((at, i) => ({ ...lines[at]!, restBeats: i < order.length - 1 ? 6 : 0 })),
  );
  const take = simulateTake({ sheet: played, seed, jitter: 0.05, before: 'talk' });
  return recogniseLines(sheet, { sounds: take.strokes, noiseFloorDb: -70, click: null });
};

describe('recogniseLines', () => {
  it.each([[[0, 1, 2, 3]], [[3, 0]], [[1, 2, 1]], [[2]], [[0, 0, 3]]])(
    'finds lines %j in their order',
    (order) => {
      for (const seed of [1, 2, 3])
        expect(found(order, seed).map(({ line: at, repeats }) => [at, repeats])).toEqual(
          order.map((at) => [at, 2]),
        );
    },
  );

  it('finds nothing in talk', () => {
    const { strokes } = simulateTake({ sheet, seed: 6, before: 'talk' });
    const sounds = strokes.slice(0, 12);
    expect(recogniseLines(sheet, { sounds, noiseFloorDb: -70, click: null })).toEqual([]);
  });
});

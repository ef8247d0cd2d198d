import { describe, expect, it } from 'vitest';
import { strayStrokes } from '../../../src/core/measures/stray-strokes.ts';
import { figureOf } from './coverage.ts';
import { players, simulatedPerformance } from './simulated-performance.ts';

describe('stray-strokes', () => {
  it('shows every stroke 60 ms off, and hardly another', () => {
    const off = new Set([20, 61, 62, 100]);
    const take = simulatedPerformance({
      sheet: 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12',
      seed: 3,
      player: players['middling corrector']!,
      habit: (slot) => (off.has(slot.index) ? 0.06 : 0),
    });
    const figure = figureOf(strayStrokes, take);
    expect(figure.pointsAt).toEqual(expect.arrayContaining([...off]));
    expect(figure.pointsAt.length).toBeLessThanOrEqual(5);
  });
  it('calls fewer than one stroke in two hundred of a clean player stray', () => {
    let strays = 0;
    for (let seed = 1; seed <= 50; seed++) {
      const sheet = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';
      strays += simulatedPerformance({ sheet, seed, player: players['independent jitter']! }).timing!.strays
        .length;
    }
    expect(strays / (50 * 144)).toBeLessThan(0.005);
  });
});

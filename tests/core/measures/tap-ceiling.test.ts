import { describe, expect, it } from 'vitest';
import { tapCeiling } from '../../../src/core/measures/tap-ceiling.ts';
import { figureOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const loud = new Set([10, 40, 73]);
const play = (settings: string, gap = 12) =>
  simulatedPerformance({
    sheet: `tempo: 110\n>RLR >LRL; x24${settings}`,
    seed: 1,
    player: machine,
    levelSd: () => 0,
    levelSe: 0,
    level: (slot) => (slot.accent ? -18 : loud.has(slot.index) ? -24 : -18 - gap),
  });

describe('tap-ceiling', () => {
  it('is the share of taps less than 8 dB under the middle accent, and shows them', () => {
    const figure = figureOf(tapCeiling, play(''));
    expect(figure.value).toBeCloseTo((100 * 3) / 96, 10);
    expect(figure.strokes).toBe(96);
    expect([...figure.pointsAt].sort((a, b) => a - b)).toEqual([10, 40, 73]);
    expect(figure.low).toBeGreaterThan(0);
    expect(figure.high).toBeLessThan(12);
  });
  it('takes the ratio that the sheet asks for', () => {
    expect(figureOf(tapCeiling, play('; ratio: 5 to 20 dB')).value).toBe(0);
    expect(figureOf(tapCeiling, play('; ratio: 14 to 20 dB')).value).toBe(100);
  });
  it('keeps an interval round a share of none', () => {
    const figure = figureOf(tapCeiling, play('; ratio: 5 to 20 dB'));
    expect(figure.low).toBe(0);
    expect(figure.high).toBeGreaterThan(1);
  });
});

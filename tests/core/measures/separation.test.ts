import { describe, expect, it } from 'vitest';
import { separation } from '../../../src/core/measures/separation.ts';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';
import { coverage, figureOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const play = (seed: number, gap: number) =>
  simulatedPerformance({
    sheet: 'tempo: 110\n>RLR >LRL; x24',
    seed,
    player: machine,
    levelSe: 0,
    level: (slot) => (slot.accent ? -18 : -18 - gap),
    levelSd: () => 1.5,
  });

describe('separation', () => {
  it('is certain, with an interval that stays honest, where every accent tops every tap', () => {
    const figure = figureOf(separation, play(1, 30));
    expect(figure.value).toBe(1);
    expect(figure.low).toBeGreaterThan(0.9);
    expect(figure.low).toBeLessThan(1);
    expect(figure.high).toBe(1);
    expect(figure.pointsAt).toEqual([]);
  });

  it.each([3, 5])('of normal levels %i dB apart is Φ(gap/√2σ); its interval errs on the wide side', (gap) => {
    const truth = normalCdf(gap / (1.5 * Math.SQRT2));
    const { share, mean } = coverage(300, (seed) => play(seed, gap), truth, separation);
    expect(Math.abs(mean - truth)).toBeLessThan(0.01);
    expect(share).toBeGreaterThan(0.94);
  });

  it('points at overlapping strokes', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 110\n>RLR >LRL; x24',
      seed: 1,
      player: machine,
      levelSd: () => 0,
      levelSe: 0,
      level: (slot) => (slot.index === 40 ? -10 : slot.accent ? -18 : -30),
    });
    expect(figureOf(separation, take).pointsAt).toContain(40);
    expect(figureOf(separation, take).value).toBeCloseTo(1 - 1 / 96, 10);
  });
});

import { describe, expect, it } from 'vitest';
import { handOffset } from '../../../src/core/measures/hand-offset.ts';
import { placement } from '../../../src/core/measures/placement.ts';
import { windowScatter } from '../../../src/core/measures/window-scatter.ts';
import { figureOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

/*
 * 96 triplet strokes hand to hand, 180 ms apart, onset i s off by 0.008 sin(1.7 i² + 0.3) + place + hand. The figures
 * were worked out apart from this code with numpy 2.4.6 and scipy 1.17.1: weighted lstsq for every local line, lstsq on
 * what remains with partial 3 for reference, the sandwich written out
 * and times (96/93)² for the three habits, polyfit for every window of 13 strokes, the
 * root of whose variance, 5.997739897995603 ms, is divided by that of truncnorm(-3.5, 3.5).var(), 0.9938883776525235.
 */
const take = simulatedPerformance({
  sheet: 'tempo: 111.111\nRLR LRL; x16',
  seed: 1,
  player: machine,
  timeSe: 0,
  habit: ({ index, partial, hand }) =>
    0.008 * Math.sin(1.7 * index * index + 0.3) +
    [0, -0.005, 0.004][partial - 1]! +
    (hand === 'L' ? 0.002 : -0.002),
});

describe('timing figures worked out with numpy', () => {
  it('agree on the place of a partial and its interval', () => {
    const { value, low, high } = figureOf(placement, take, { partial: 2 });
    expect(value).toBeCloseTo(-4.845536877001889, 6);
    expect(low).toBeCloseTo(-6.654034109352314, 6);
    expect(high).toBeCloseTo(-3.037039644651464, 6);
  });
  it('agree on the hands', () => {
    const { value, low, high } = figureOf(handOffset, take);
    expect(value).toBeCloseTo(3.2056363129794576, 6);
    expect(low).toBeCloseTo(0.5783407663649363, 6);
    expect(high).toBeCloseTo(5.8329318595939785, 6);
  });
  it('agree on the scatter', () => {
    expect(1000 * Math.sqrt(windowScatter(take.timing!).variance)).toBeCloseTo(6.016152298939404, 6);
  });
});

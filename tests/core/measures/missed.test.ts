import { describe, expect, it } from 'vitest';
import { missed } from '../../../src/core/measures/missed.ts';
import { wilsonInterval } from '../../../src/core/stats/wilson-interval.ts';
import { takeWithFaults } from './completeness.ts';
import { figureOf, outcomeOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

describe('missed', () => {
  it('is two of 96, and shows where', () => {
    const figure = figureOf(missed, takeWithFaults({ missed: [5, 60] }));
    expect(figure.value).toBeCloseTo(200 / 96, 10);
    expect(figure.strokes).toBe(96);
    expect(figure.pointsAt).toEqual([4, 58]);
  });
  it("keeps room above none that is at least Wilson's", () => {
    const figure = figureOf(missed, takeWithFaults({}));
    expect(figure.value).toBe(0);
    expect(figure.low).toBe(0);
    expect(figure.high).toBeGreaterThan(100 * wilsonInterval(0, 96, 1.96).high);
    expect(figure.high).toBeLessThan(8);
  });
  it('needs 24 written strokes', () => {
    const short = simulatedPerformance({ sheet: 'tempo: 100\n>RLR >LRL; x3', seed: 1, player: machine });
    expect(outcomeOf(missed, short)).toMatchObject({
      state: 'not-measurable',
      reason: { code: 'too-few-strokes' },
    });
  });
});

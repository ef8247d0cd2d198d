import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { circularSummary } from '../../../src/core/stats/circular-summary.ts';
import { describeOutside } from '../../outside.ts';

const radians = (degrees: readonly number[]) => degrees.map((angle) => (angle * Math.PI) / 180);
const degrees = (angle: number) => ((angle * 180) / Math.PI + 360) % 360;

describe('circularSummary', () => {
  it('is the example', () => {
    const { direction, resultant } = circularSummary([0, Math.PI / 2]);
    expect(direction).toBeCloseTo(Math.PI / 4, 14);
    expect(resultant).toBeCloseTo(Math.SQRT1_2, 14);
  });

  it('needs an angle', () => expect(() => circularSummary([])).toThrow(RangeError));

  // Mardia & Jupp 2000, roulette wheel; Zar, example 26.2; both quoted from memory.
  it('is that of two textbooks', () => {
    const roulette = circularSummary(radians([43, 45, 52, 61, 75, 88, 88, 279, 357]));
    expect(degrees(roulette.direction)).toBeCloseTo(51.05, 1);
    expect(roulette.resultant).toBeCloseTo(0.711, 3);
    const zar = circularSummary(radians([45, 55, 81, 96, 110, 117, 132, 154]));
    expect(degrees(zar.direction)).toBeCloseTo(98.99, 1);
    expect(zar.resultant).toBeCloseTo(0.82522, 4);
  });

  // R's CircStats, as astropy quotes it in its own tests.
  it("has Rayleigh's test as R has it", () => {
    const { p, resultant } = circularSummary(radians([190.18, 175.48, 155.95, 217.83, 156.36]));
    expect(resultant).toBeCloseTo(0.9202565, 7);
    expect(p).toBeCloseTo(0.00640418, 7);
  });

  // R's circular, as scipy quotes it in its own tests.
  it('has the mean of angles round north', () => {
    const { direction, resultant } = circularSummary(radians([355, 5, 2, 359, 10, 350]));
    expect(degrees(direction)).toBeCloseTo(0.167690146, 7);
    expect(1 - resultant).toBeCloseTo(0.006455174000787767, 12);
  });
});

const lists = 'circular_slosar/angles_and_results.json';
const vectors = 'r_vectors/r_check_vectors.json';
const read = (folder: string, name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'));

// Nežka Slosar, Tapping-analysis (CC0): taps' angles with the results that R gave.
describeOutside('twelve rows of taps as angles, published with their results', [lists], (folder) => {
  it('have the same mean direction, resultant and chance', () => {
    const rows = read(folder, lists);
    expect(rows).toHaveLength(12);
    for (const { trial, angles_deg, published } of rows) {
      const { direction, resultant, p } = circularSummary(radians(angles_deg));
      const apart = degrees(direction) - (((published.MEAN % 360) + 360) % 360);
      expect(Math.abs(((apart + 540) % 360) - 180), trial).toBeLessThan(1e-9);
      expect(resultant, trial).toBeCloseTo(published.Rho, 12);
      expect(p, trial).toBeCloseTo(published.RAYsig, 12);
    }
  });
});

describeOutside('angles worked out with R 4.2.2 and circular 0.4-95', [vectors], (folder) => {
  it('agree', () => {
    const { circ_tap, turtles } = read(folder, vectors);
    const taps = circularSummary(circ_tap.phase);
    expect(taps.direction).toBeCloseTo(circ_tap.mean, 10);
    expect(taps.resultant).toBeCloseTo(circ_tap.R, 10);
    expect(taps.p).toBeCloseTo(circ_tap.rayleigh_p, 8);
    const homing = circularSummary(radians(turtles.deg));
    expect(degrees(homing.direction)).toBeCloseTo(degrees((turtles.mean_deg * Math.PI) / 180), 8);
    expect(homing.resultant).toBeCloseTo(turtles.R, 8);
    expect(homing.p).toBeCloseTo(turtles.rayleigh_p, 8);
  });
});

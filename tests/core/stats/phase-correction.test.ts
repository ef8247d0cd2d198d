import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { phaseCorrection } from '../../../src/core/stats/phase-correction.ts';
import { describeOutside } from '../../outside.ts';
import { asynchronies, normalFrom, uniformFrom } from '../measures/simulated-performance.ts';

describe('phaseCorrection', () => {
  it('is the example', () => {
    expect(phaseCorrection([1, 0, 1, 0, 1, 0, 1])).toEqual({ gain: 2, timekeeper: 0, movement: 0 });
  });

  it('needs six asynchronies', () => expect(() => phaseCorrection([1, 2, 3, 4, 5])).toThrow(RangeError));

  it('gives back what a long simulated row was made with', () => {
    const player = { clock: 10, motor: 5, correction: 0.3, selfPaced: false };
    const { gain, timekeeper, movement } = phaseCorrection(
      asynchronies(player, 50_000, normalFrom(uniformFrom(8))),
    );
    expect(gain).toBeCloseTo(0.3, 1);
    expect(Math.abs(timekeeper - 10)).toBeLessThan(0.3);
    expect(Math.abs(movement - 5)).toBeLessThan(0.3);
  });
});

// Bååth & Madison 2012, data MIT; gains and scatters by the program of the method's authors, run in Octave 7.3.0.
const data = 'baath_madison_2012/tapping_data_baath_madison_2012.csv';
const reference = 'baath_madison_2012/bgls_reference_per_trial.csv';
describeOutside("phase correction against its authors' program", [data, reference], (folder) => {
  const rows = (name: string) =>
    readFileSync(join(folder, name), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((row) => row.split(',').map(Number));
  const trials = new Map<string, number[]>();
  for (const [person, trial, , asynchrony] of rows(data)) {
    const key = `${person} ${trial}`;
    trials.set(key, [...(trials.get(key) ?? []), asynchrony!]);
  }

  it('agrees on every one of 600 trials', () => {
    const wanted = rows(reference);
    expect(wanted).toHaveLength(600);
    for (const [person, trial, , count, gain, timekeeper, movement] of wanted) {
      const own = trials.get(`${person} ${trial}`)!;
      const name = `person ${person}, trial ${trial}`;
      expect(own, name).toHaveLength(count!);
      const found = phaseCorrection(own);
      expect(Math.abs(found.gain - gain!), name).toBeLessThan(1e-7);
      expect(Math.abs(found.timekeeper - timekeeper!), name).toBeLessThan(1e-5);
      expect(Math.abs(found.movement - Math.abs(movement!)), name).toBeLessThan(1e-5);
    }
  });
});

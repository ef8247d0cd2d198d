import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { mean } from '../../../src/core/stats/mean.ts';
import { standardDeviation } from '../../../src/core/stats/standard-deviation.ts';
import { describeOutside } from '../../outside.ts';

/** Standard deviation with divisor n. */
const populationSd = (values: readonly number[]) =>
  standardDeviation(values) * Math.sqrt((values.length - 1) / values.length);

// Pazdera & Trainor 2025, Sci Rep 15:17012, data CC BY 4.0, with the figures that they publish for Experiment 1.
describeOutside('self-paced tapping of 39 people', ['pazdera_trainor_2025/smt_taps_ms.csv'], (folder) => {
  it('has the published mean interval and spread', () => {
    const rows = readFileSync(join(folder, 'pazdera_trainor_2025/smt_taps_ms.csv'), 'utf8')
      .trim()
      .split('\n')
      .filter((row) => !row.startsWith('#'))
      .map((row) => row.split(',').slice(1).map(Number));
    const means = rows.map((times) => {
      const intervals = times.slice(1).map((time, k) => time - times[k]!);
      const [centre, sd] = [mean(intervals), populationSd(intervals)];
      return mean(intervals.filter((interval) => Math.abs(interval - centre) <= 3 * sd));
    });
    expect(means).toHaveLength(39);
    expect(mean(means)).toBeCloseTo(620.4892636099532, 10);
    expect(populationSd(means)).toBeCloseTo(203.73955716495777, 10);
  });
});

// Bååth & Madison 2012, data MIT: interval, mean of the trials' means and of their standard deviations, ms, worked out
// with another program.
const baathMadison: readonly (readonly [number, number, number])[] = [
  [600, -40.113, 32.787],
  [1200, -48.888, 61.26],
  [1800, -50.947, 104.67],
  [2400, -77.707, 154.044],
  [3000, -117.175, 209.092],
];
const asynchronies = 'baath_madison_2012/tapping_data_baath_madison_2012.csv';
describeOutside('tapping of 30 people to a click', [asynchronies], (folder) => {
  const rows = readFileSync(join(folder, asynchronies), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => row.split(',').map(Number));
  const trials = new Map<string, { readonly interval: number; readonly own: number[] }>();
  for (const [subject, trial, interval, asynchrony] of rows) {
    const name = `${subject} ${trial}`;
    const known = trials.get(name) ?? { interval: interval!, own: [] };
    known.own.push(asynchrony!);
    trials.set(name, known);
  }
  it('is read whole', () => {
    expect(rows).toHaveLength(17_356);
    expect(trials.size).toBe(600);
  });
  it.each(baathMadison)('at %d ms has its mean and spread', (interval, centre, sd) => {
    const own = [...trials.values()].filter((trial) => trial.interval === interval);
    expect(mean(own.map((trial) => mean(trial.own)))).toBeCloseTo(centre, 3);
    expect(mean(own.map((trial) => standardDeviation(trial.own)))).toBeCloseTo(sd, 3);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { autocorrelation } from '../../../src/core/stats/autocorrelation.ts';
import { mad, madToSd } from '../../../src/core/stats/mad.ts';
import { mannKendall } from '../../../src/core/stats/mann-kendall.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { median } from '../../../src/core/stats/median.ts';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';
import { normalQuantile } from '../../../src/core/stats/normal-quantile.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { standardDeviation } from '../../../src/core/stats/standard-deviation.ts';
import { theilSen } from '../../../src/core/stats/theil-sen.ts';
import { describeOutside } from '../../outside.ts';

const values = 'r_vectors/r_check_vectors.json';
const resamples = 'r_vectors/boot_indices_sd_R999.csv';
const blocks = 'r_vectors/tsboot_mbb_l5_indices_R499.csv';
const read = (folder: string, name: string) => readFileSync(join(folder, name), 'utf8');
const indices = (folder: string, name: string) =>
  read(folder, name)
    .trim()
    .split('\n')
    .map((row) => row.split(',').map((index) => Number(index) - 1));

// R 4.2.2 with boot 1.3-28.1, on trials of Bååth & Madison 2012.
describeOutside('a trial of tapping, worked out by R', [values], (folder) => {
  const { clean_trial: trial, robust } = JSON.parse(read(folder, values));
  const series: number[] = trial.asynch;

  it('has the same middle, spread and memory', () => {
    expect(mean(series)).toBeCloseTo(trial.mean, 11);
    expect(standardDeviation(series)).toBeCloseTo(trial.sd, 11);
    expect(median(series)).toBe(trial.median);
    expect(mad(series) * madToSd).toBeCloseTo(trial.mad, 3);
    expect(quantile(series, 0.75) - quantile(series, 0.25)).toBeCloseTo(trial.iqr7, 11);
    [1, 2, 3].forEach((lag) => {
      expect(autocorrelation(series, lag)).toBeCloseTo(trial.acf[lag - 1], 11);
    });
  });

  it('has the same trend, ties included', () => {
    const trend = mannKendall(series);
    expect(trend.s).toBe(trial.S);
    expect(trend.variance).toBeCloseTo(trial.varS_tie, 9);
    expect(trend.z).toBeCloseTo(trial.z_cc, 11);
    expect(trend.p).toBeCloseTo(trial.p_cc, 11);
    expect(theilSen([...series.keys()], series).slope).toBeCloseTo(trial.theil_sen, 11);
  });

  it('has the same quantiles where some taps lie far out', () => {
    [0.05, 0.25, 0.5, 0.75, 0.95].forEach((p, k) => {
      expect(quantile(robust.x, p)).toBeCloseTo(robust.quant_type7[k], 10);
    });
  });
});

// The resamples that R drew are stored, so that its figures can be repeated exactly.
describeOutside("R's resamples", [values, resamples, blocks], (folder) => {
  const { boot_sd: boot, boot_data: data, mbb, clean_trial: trial } = JSON.parse(read(folder, values));
  const spreads = indices(folder, resamples).map((row) => standardDeviation(row.map((i) => data[i])));

  it('have the same spreads: error, bias and bounds by rank', () => {
    expect(spreads).toHaveLength(999);
    expect(standardDeviation(spreads)).toBeCloseTo(boot.se, 9);
    expect(mean(spreads) - standardDeviation(data)).toBeCloseTo(boot.bias, 9);
    const sorted = spreads.toSorted((a, b) => a - b);
    [25, 975].forEach((rank, k) => {
      expect(sorted[rank - 1]).toBeCloseTo(boot.perc[k], 9);
      expect(2 * boot.t0 - sorted[999 - rank]!).toBeCloseTo(boot.basic[k], 9);
    });
  });

  // Efron 1987: ranks shifted by bias and acceleration, the latter by the jackknife, not centred as boot takes it.
  it('give the ranks of corrected bounds by the normal distribution', () => {
    const whole = standardDeviation(data);
    const bias = normalQuantile(spreads.filter((spread) => spread < whole).length / spreads.length);
    expect(bias).toBeCloseTo(boot.z0, 11);
    const pulls = data.map(
      (_: number, left: number) =>
        (data.length - 1) * (whole - standardDeviation(data.filter((__: number, i: number) => i !== left))),
    );
    const sum = (power: number) => pulls.reduce((total: number, pull: number) => total + pull ** power, 0);
    const acceleration = sum(3) / (6 * sum(2) ** 1.5);
    expect(acceleration).toBeCloseTo(boot.a_jack, 10);
    [0.025, 0.975].forEach((p, k) => {
      const shifted = bias + normalQuantile(p);
      const rank = 1000 * normalCdf(bias + shifted / (1 - acceleration * shifted));
      expect(rank).toBeCloseTo(boot.bca_ranks[k], 2);
    });
  });

  it('by blocks of five have the same spreads', () => {
    const blocked = indices(folder, blocks).map((row) => standardDeviation(row.map((i) => trial.asynch[i])));
    expect(blocked).toHaveLength(mbb.R);
    expect(standardDeviation(blocked)).toBeCloseTo(mbb.se, 9);
    expect(mean(blocked)).toBeCloseTo(mbb.mean, 9);
  });
});

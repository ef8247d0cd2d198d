import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { clockAndMotorVariance } from '../../../src/core/stats/clock-and-motor-variance.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { describeOutside } from '../../outside.ts';
import { asynchronies, normalFrom, uniformFrom } from '../measures/simulated-performance.ts';

describe('clockAndMotorVariance', () => {
  it('is the example', () => {
    const { lagZero, lagOne, clock, motor } = clockAndMotorVariance([1, 2, 1, 2, 1]);
    expect(lagZero).toBeCloseTo(0.4, 14);
    expect(lagOne).toBeCloseTo(-0.24, 14);
    expect(clock).toBeCloseTo(-0.08, 14);
    expect(motor).toBeCloseTo(0.24, 14);
  });

  // γ(0) = 8² + 2·4² = 96 and γ(1) = −4² follow from the model.
  it('finds the clock and the movement of a long row made with both', () => {
    const player = { clock: 8, motor: 4, correction: 0, selfPaced: true };
    const onsets = asynchronies(player, 200_000, normalFrom(uniformFrom(5)));
    const found = clockAndMotorVariance(onsets.subarray(1).map((at, k) => 500 + at - onsets[k]!));
    expect(Math.abs(found.clock - 64)).toBeLessThan(1.5);
    expect(Math.abs(found.motor - 16)).toBeLessThan(0.7);
  });

  it('takes drift for what it is', () => {
    const steady = [500, 510, 495, 503, 508, 492, 501, 499];
    const slowing = steady.map((length, k) => length + 7 * k);
    expect(clockAndMotorVariance(slowing).motor).toBeCloseTo(clockAndMotorVariance(steady).motor, 9);
  });

  it('makes no neighbours of intervals with a gap between', () => {
    const lengths = [5, 9, 4, 7, 6];
    const found = clockAndMotorVariance(lengths, [0, 1, 3, 4, 5]);
    // Less their line (6.2 without slope): −1.2, 2.8, −2.2, 0.8, −0.2.
    expect(found.lagOne).toBeCloseTo((-1.2 * 2.8 - 2.2 * 0.8 - 0.8 * 0.2) / 3, 13);
  });

  it('needs three intervals, two of them neighbours', () => {
    expect(() => clockAndMotorVariance([1, 2])).toThrow(RangeError);
    expect(() => clockAndMotorVariance([1, 2, 4], [0, 2, 4])).toThrow(RangeError);
  });
});

const summary = 'pazdera_trainor_2025/computed_wk_summary.json';
const taps = 'pazdera_trainor_2025/sync_continuation_10subj.csv';

/*
 * Pazdera & Trainor 2025, Sci Rep 15:17012, data CC BY 4.0: ten people went on tapping after eight tones. The summary
 * was worked out with another program: trials whose continued intervals all lie within 0.6 … 1.4 of the tones', less
 * each trial's line, both sums divided by n − 2, means over trials.
 */
describeOutside('people who tap on without a click', [summary, taps], (folder) => {
  it('have the clock and motor variances worked out elsewhere', () => {
    const trials = new Map<string, number[][]>();
    for (const row of readFileSync(join(folder, taps), 'utf8').trim().split('\n').slice(1)) {
      const [subject, , ioi, , all] = row.split(',');
      const times = all!
        .split(' ')
        .filter((tap) => tap.startsWith('C'))
        .map((tap) => Number(tap.slice(1)));
      const lengths = times.slice(1).map((time, k) => time - times[k]!);
      const name = `${subject} ${ioi}`;
      const within = lengths.every((length) => length > 0.6 * Number(ioi) && length < 1.4 * Number(ioi));
      if (within) trials.set(name, [...(trials.get(name) ?? []), lengths]);
    }
    const table: readonly {
      readonly subject: number;
      readonly ioi: number;
      readonly trials_used: number;
      readonly motor_var: number;
      readonly clock_var: number;
    }[] = JSON.parse(readFileSync(join(folder, summary), 'utf8'));
    expect(table).toHaveLength(20);
    for (const { subject, ioi, trials_used, motor_var, clock_var } of table) {
      const found = trials.get(`${subject} ${ioi}`)!.map((lengths) => {
        const { intervals, lagZero, lagOne } = clockAndMotorVariance(lengths);
        return { lagZero, lagOne: (lagOne * (intervals - 1)) / (intervals - 2) };
      });
      const lagOne = mean(found.map((one) => one.lagOne));
      expect(found).toHaveLength(trials_used);
      expect(-lagOne / motor_var).toBeCloseTo(1, 11);
      expect((mean(found.map((one) => one.lagZero)) + 2 * lagOne) / clock_var).toBeCloseTo(1, 11);
    }
  });
});

import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import type { LostStretch } from './lost-stretch.ts';

/** Sounds come evenly where so many intervals lie so near a multiple of their period, as a share of it. */
const even = { share: 0.25, of: 0.7 };
const fewestIntervals = 24;
/** Intervals of more periods are pauses, after which a player begins where he likes. */
const mostPeriods = 2;
/** So many intervals on each side tell the period there, so many with the same place in the pattern their habit. */
const beside = { period: 9, fewest: 5, habit: 8, alike: 3 };
/** Periods of a pattern of habits that are tried; a longer one has to make the scatter so much smaller. */
const patterns = { lengths: [1, 2, 3, 4, 6], better: 0.85 };
/**
 * A step is so large, s, and so many times the scatter. Set on takes of other kinds than `reports/recording-check.md`
 * has.
 */
const step = { seconds: 0.015, scatter: 4 };
/** Steps of one size lie so near each other, s and in scatter; so many and so great a share of all have it. */
const alike = { seconds: 0.012, scatter: 3, fewest: 3, share: 0.6 };
/** More steps than this share of intervals are the player's. */
const mostSteps = 0.25;

interface Step {
  readonly time: number;
  /** How much later than the period asks, s, of which whole periods don't count. */
  readonly over: number;
  readonly period: number;
}

/**
 * Sound lost without a trace, by what it does to the phase of sounds that come evenly: it jumps back by what was lost,
 * stays there, and jumps by as much each time. Strokes inside what was lost don't matter, for a step counts but for
 * whole periods: 80 ms of 150 that swallowed a stroke read as 70 ms too much, which is the same phase. Players hurry
 * and stumble by amounts that differ.
 *
 * @param times Onsets in order, s.
 */
export function phaseSteps(times: readonly number[]): readonly LostStretch[] {
  const seconds = times.slice(1).map((time, i) => time - times[i]!);
  if (seconds.length < fewestIntervals) return [];
  const middle = median(seconds);
  const usual = median(seconds.filter((one) => one > 0.6 * middle && one < 1.4 * middle));
  const periods = seconds.map((one) => Math.round(one / usual));
  const overs = oversOf(seconds, periods, usual);
  if (overs.filter(({ over }) => Math.abs(over) < even.share * usual).length < even.of * overs.length)
    return [];
  const { residuals, scatter } = withoutHabits(
    overs.map(({ over }) => over),
    periods,
  );
  const bound = Math.max(step.seconds, step.scatter * scatter);
  const steps: Step[] = [];
  for (const [i, own] of residuals.entries()) {
    const { period } = overs[i]!;
    // What the interval before or after makes up for, a grace note or a late stroke, is no step.
    const sums = [residuals[i - 1], residuals[i + 1]].map((near) => own + (near ?? 0));
    const over = [own, ...sums]
      .map((one) => wrapped(one, period))
      .reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    const last = steps.at(-1);
    if (periods[i]! > mostPeriods || Math.abs(over) < bound) continue;
    if (last === undefined || times[i + 1]! - last.time > 1.5 * usual)
      steps.push({ time: times[i + 1]!, over, period });
  }
  if (steps.length > mostSteps * seconds.length) return [];
  return alikeOf(steps, Math.max(alike.seconds, alike.scatter * scatter));
}

/** A time but for whole periods, between −1/2 and 1/2 of one. */
const wrapped = (seconds: number, period: number): number => seconds - Math.round(seconds / period) * period;

/** How much longer each interval is than whole periods, as long as those are there. */
function oversOf(seconds: readonly number[], periods: readonly number[], usual: number) {
  const ratios = seconds.map((one, i) => one / Math.max(1, periods[i]!));
  return seconds.map((one, i) => {
    const near: number[] = [];
    for (let j = Math.max(0, i - beside.period); j <= Math.min(seconds.length - 1, i + beside.period); j++)
      if (j !== i && Math.abs(ratios[j]! - usual) < 0.2 * usual) near.push(ratios[j]!);
    const period = near.length < beside.fewest ? usual : median(near);
    return { over: one - periods[i]! * period, period };
  });
}

/** Takes off what comes again on the same place of a pattern of strokes, whose length is what leaves the least. */
function withoutHabits(overs: readonly number[], periods: readonly number[]) {
  const places: number[] = [];
  let place = 0;
  for (const one of periods) {
    place += one;
    places.push(place);
  }
  let best: { residuals: readonly number[]; scatter: number } | null = null;
  for (const length of patterns.lengths) {
    const reach = beside.habit * length;
    const residuals = overs.map((over, i) => {
      const same: number[] = [];
      for (let j = Math.max(0, i - reach); j <= Math.min(overs.length - 1, i + reach); j++)
        if (j !== i && (places[j]! - places[i]!) % length === 0 && periods[j] === periods[i])
          same.push(overs[j]!);
      return same.length < beside.alike ? over : over - median(same);
    });
    const scatter = madToSd * median(residuals.map(Math.abs));
    if (best === null || scatter < patterns.better * best.scatter) best = { residuals, scatter };
  }
  return best!;
}

/** The steps that most have in common, as stretches that were lost; none where they differ. */
function alikeOf(steps: readonly Step[], near: number): readonly LostStretch[] {
  let most: readonly LostStretch[] = [];
  for (const { over, period } of steps) {
    const seconds = -over - Math.floor(-over / period) * period;
    const same = steps.filter((other) => Math.abs(wrapped(-other.over - seconds, other.period)) <= near);
    if (same.length > most.length) most = same.map(({ time }) => ({ time, seconds }));
  }
  return most.length >= alike.fewest && most.length >= alike.share * steps.length ? most : [];
}

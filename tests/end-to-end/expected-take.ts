import { expect } from 'vitest';
import type { TakeTruth } from '../../fixtures/generator/take-truth.ts';
import { median } from '../../src/core/stats/median.ts';
import { gradedSample, gradedStrokes, nearestStroke, outcomeOf } from './sample-take.ts';
import type { TrueFigure } from './true-figures.ts';

/** What a sample take should show, written by hand from its truth. */
export interface ExpectedTake {
  readonly written: number;
  readonly matched: number;
  readonly missed: number;
  readonly extra?: number;
  readonly doubled?: number;
  readonly abandoned?: number;
  readonly surplus?: number;
  readonly outside?: number;
  /** First and last slot of each run, and its state. */
  readonly runs: readonly (readonly [number, number, 'graded' | 'abandoned' | 'surplus'])[];
  /** A dropped stroke among others that sound like it: no sound tells which of this beat it was. */
  readonly slip?: readonly number[];
  /** What the take was made to show: measure, true value, part of the take. */
  readonly shows?: readonly TrueFigure[];
}

/** Onsets are found to well under a millisecond; the rest is for rounding in the files. */
const mostTimeError = 0.0005;
/**
 * The truth's levels are peaks of whole strokes, the measure's come from their power up to 3 kHz: of a harder, brighter
 * stroke more lies above. In the synthesised strokes that makes 1.3 dB; beyond it the interval must hold the truth.
 */
const definitionsApartDb = 1.5;

/** The counts of the truth, named as the result names them. */
export function trueCounts(truth: TakeTruth): Required<Pick<ExpectedTake, CountName>> {
  const role = (name: string) => truth.strokes.filter((stroke) => stroke.role === name).length;
  const inState = (state: string) =>
    truth.strokes.filter(
      ({ role, segment }) =>
        role !== 'noodle' && segment !== null && truth.segments[segment]?.state === state,
    ).length;
  return {
    matched: gradedStrokes(truth).length,
    extra: role('extra'),
    doubled: role('bounce'),
    abandoned: inState('abandoned'),
    surplus: inState('surplus'),
    outside: role('noodle'),
  };
}

type CountName = 'matched' | 'extra' | 'doubled' | 'abandoned' | 'surplus' | 'outside';
const none = { extra: 0, doubled: 0, abandoned: 0, surplus: 0, outside: 0 };

/** The row agrees with the truth's own file. */
export function checkRow(name: string, row: ExpectedTake): void {
  const { truth } = gradedSample(name);
  const { written, missed, runs, slip, shows, ...counts } = row;
  expect(trueCounts(truth)).toEqual({ ...none, ...counts });
  expect(written - counts.matched).toBe(missed);
  if (slip === undefined) expect(truth.segments.map((s) => [s.firstSlot, s.lastSlot, s.state])).toEqual(runs);
}

/** Every stroke is found once, at its time, in its role, and nothing else is taken for a stroke. */
export function checkStrokes(name: string, row: ExpectedTake): void {
  const { truth, result } = gradedSample(name);
  const { strokes, slots } = result;
  const counted = Object.fromEntries(
    Object.keys({ matched: 0, ...none }).map((role) => [role, strokes.role.filter((r) => r === role).length]),
  );
  const { matched, extra = 0, doubled = 0, abandoned = 0, surplus = 0, outside = 0 } = row;
  expect(counted).toEqual({ matched, extra, doubled, abandoned, surplus, outside });
  expect(slots.state.filter((state) => state === 'missed')).toHaveLength(row.missed);
  expect(slots.state.filter((state) => state === 'not-reached')).toHaveLength(0);
  expect(slots.state).toHaveLength(row.written);

  const wrong: string[] = [];
  for (const { time, slot } of gradedStrokes(truth)) {
    const found = nearestStroke(result, time);
    const error = Math.abs(strokes.time[found]! - time);
    const slotFits = strokes.slot[found] === slot || row.slip?.includes(slot!);
    if (error > mostTimeError || !slotFits)
      wrong.push(`slot ${slot} at ${time}: on slot ${strokes.slot[found]}, ${error} s off`);
  }
  expect(wrong).toEqual([]);
  const trueTimes = truth.strokes.map((stroke) => stroke.time);
  const invented = strokes.time.filter((time) => !trueTimes.some((t) => Math.abs(t - time) < 0.005));
  expect(invented).toEqual([]);
}

/** Runs begin and end where they did, in their state; a slip leaves its beat open. */
export function checkRuns(name: string, { runs, slip = [] }: ExpectedTake): void {
  const found = gradedSample(name).result.segments;
  expect(found.map(({ state }) => state)).toEqual(runs.map(([, , state]) => state));
  const open = (slot: number) => (slip.includes(slot) ? slip[0]! : slot);
  expect(found.map((s) => [open(s.firstSlot), open(s.lastSlot)])).toEqual(
    runs.map(([first, last]) => [open(first), open(last)]),
  );
}

/** What the take was made to show lies within the measure's 95 % interval, and the accents stand out as they did. */
export function checkFigures(name: string, { shows = [] }: ExpectedTake): void {
  const { truth, result } = gradedSample(name);
  expect(result.grading).toEqual({ state: 'graded' });
  for (const { id, scope, value } of shows) {
    const outcome = outcomeOf(result, id, scope);
    expect(outcome).toMatchObject({ state: 'measured' });
    if (outcome?.state !== 'measured') continue;
    expect(outcome.low, id).toBeLessThanOrEqual(value);
    expect(outcome.high, id).toBeGreaterThanOrEqual(value);
  }
  const levels = (accent: boolean) =>
    gradedStrokes(truth)
      .filter((stroke) => stroke.accent === accent)
      .map(({ levelDb }) => levelDb);
  const ratio = outcomeOf(result, 'accent-to-tap-ratio');
  expect(ratio).toMatchObject({ state: 'measured' });
  if (ratio?.state !== 'measured') return;
  const truly = median(levels(true)) - median(levels(false));
  expect(ratio.low - definitionsApartDb).toBeLessThan(truly);
  expect(ratio.high + definitionsApartDb).toBeGreaterThan(truly);
}

import { median } from '../stats/median.ts';
import { fitRun } from './fit-run.ts';
import type { MainSlots } from './main-slots.ts';
import type { ThinStrokes } from './thin-strokes.ts';

/** Slots looked ahead, and how many of them must be met for a run to begin there (our judgement). */
const ahead = 8;
const enough = 0.45;
/** A slot ahead is met within this share of the rhythm's least space (our judgement). */
const reachShare = 0.35;
/**
 * Shares of a residual taken into the place and the tempo. Measured on 120 simulated takes: half or twice the first is
 * worse, half of the second the same, twice worse.
 */
const follows = { due: 0.5, period: 0.2 };
/** What a stroke between two met ones takes from the fit; half the tempo leaves out every second (our judgement). */
const passedOver = 0.5;

/** Where the beat stands as strokes ahead tell it: due time of the first slot (s) and seconds per beat. */
export interface Pulse {
  readonly due: number;
  readonly period: number;
}

/** Strokes met along the slots ahead, with how well they fit. */
interface Followed {
  readonly onBeats: readonly number[];
  readonly onTimes: readonly number[];
  readonly fit: number;
}

/** Follows the strokes from a first one on and counts how well they keep meeting the slots ahead. */
const follow = (
  times: Float64Array,
  { kept }: ThinStrokes,
  first: number,
  from: number,
  beats: readonly number[],
  room: number,
  begin: number,
): Followed => {
  let period = begin;
  let due = times[first]!;
  let place = from;
  const onBeats = [0];
  const onTimes = [due];
  let fit = 0;
  for (let k = 1; k < beats.length; k++) {
    const step = beats[k]! - beats[k - 1]!;
    due += step * period;
    const reach = reachShare * room * period;
    while (place < kept.length && times[kept[place]!]! < due - reach) place++;
    let best = Number.POSITIVE_INFINITY;
    for (let i = place; i < kept.length && times[kept[i]!]! <= due + reach; i++) {
      const residual = times[kept[i]!]! - due;
      if (Math.abs(residual) < Math.abs(best)) {
        best = residual;
        place = i + 1;
      }
    }
    if (Number.isFinite(best)) {
      onBeats.push(beats[k]! - beats[0]!);
      onTimes.push(due + best);
      fit += 1 - (best / reach) ** 2;
      due += follows.due * best;
      period += (follows.period * best) / Math.max(step, 1e-3);
    }
  }
  const passed = place - from - (onBeats.length - 1);
  return { onBeats, onTimes, fit: fit - passedOver * passed };
};

/**
 * The pulse at which the strokes from one on fit the rhythm from a slot on, or null when they don't. Tried are the
 * median ratio of intervals to the rhythm's steps and every tempo in `guesses` (seconds per beat); the strokes met
 * are fitted by a line, so that one early first stroke doesn't set the beat.
 */
export const lookAhead = (
  times: Float64Array,
  thin: ThinStrokes,
  stroke: number,
  main: MainSlots,
  slot: number,
  guesses: readonly number[],
): Pulse | null => {
  const place = thin.next[stroke]!;
  const beats: number[] = [];
  let room = Number.POSITIVE_INFINITY;
  for (let s = slot; s < main.length && main.line[s] === main.line[slot] && beats.length <= ahead; s++) {
    beats.push(main.beat[s]!);
    // What lies before the first slot isn't rhythm ahead: pulses are kept by that alone (`signature`).
    if (s > slot) room = Math.min(room, main.room[s]!);
  }
  const steps = Math.min(beats.length - 1, thin.kept.length - place);
  if (steps < 1) return guesses[0] === undefined ? null : { due: times[stroke]!, period: guesses[0] };
  const ratios: number[] = [];
  for (let k = 1; k <= steps; k++) {
    const before = k === 1 ? times[stroke]! : times[thin.kept[place + k - 2]!]!;
    const interval = times[thin.kept[place + k - 1]!]! - before;
    ratios.push(interval / Math.max(beats[k]! - beats[k - 1]!, 1e-3));
  }
  let best: Followed | null = null;
  for (const guess of [median(ratios), ...guesses]) {
    const tried = follow(times, thin, stroke, place, beats, room, guess);
    if (best === null || tried.fit > best.fit + 1e-9) best = tried;
  }
  if (best === null || best.onBeats.length - 1 < Math.max(1, enough * (beats.length - 1))) return null;
  const line = fitRun(best.onTimes, best.onBeats);
  return line === null || line.period <= 0 ? null : { due: line.origin, period: line.period };
};

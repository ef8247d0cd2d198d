import { median } from '../stats/median.ts';
import type { MainSlots } from './main-slots.ts';
import type { ThinStrokes } from './thin-strokes.ts';

/** Slots looked ahead, and how many of them must be met for a run to begin there (our judgement). */
const ahead = 8;
const enough = 0.45;

/** Follows the strokes from a first one and counts how well they keep meeting the slots ahead. */
const follow = (
  times: Float64Array,
  { kept }: ThinStrokes,
  from: number,
  beats: readonly number[],
  room: number,
  begin: number,
): { hits: number; fit: number; period: number } => {
  let period = begin;
  let due = times[kept[from]!]!;
  let place = from + 1;
  let hits = 0;
  let fit = 0;
  for (let k = 1; k < beats.length; k++) {
    const step = beats[k]! - beats[k - 1]!;
    due += step * period;
    const reach = 0.35 * room * period;
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
      hits++;
      fit += 1 - (best / reach) ** 2;
      due += 0.5 * best;
      period += (0.2 * best) / Math.max(step, 1e-3);
    }
  }
  return { hits, fit, period };
};

/**
 * The tempo (seconds per beat) at which the strokes from one on fit the rhythm from a slot on, or null when
 * they don't. Tried are the median ratio of intervals to the rhythm's steps and every tempo in `guesses`.
 */
export const lookAheadTempo = (
  times: Float64Array,
  thin: ThinStrokes,
  stroke: number,
  main: MainSlots,
  slot: number,
  guesses: readonly number[],
): number | null => {
  const place = thin.place[stroke]!;
  const beats: number[] = [];
  let room = Number.POSITIVE_INFINITY;
  for (let s = slot; s < main.length && main.line[s] === main.line[slot] && beats.length <= ahead; s++) {
    beats.push(main.beat[s]!);
    room = Math.min(room, main.room[s]!);
  }
  const steps = Math.min(beats.length, thin.kept.length - place) - 1;
  if (steps < 1) return guesses[0] ?? null;
  const ratios: number[] = [];
  for (let k = 1; k <= steps; k++) {
    const interval = times[thin.kept[place + k]!]! - times[thin.kept[place + k - 1]!]!;
    ratios.push(interval / Math.max(beats[k]! - beats[k - 1]!, 1e-3));
  }
  let best: { hits: number; fit: number; period: number } | null = null;
  for (const guess of [median(ratios), ...guesses]) {
    const tried = follow(times, thin, place, beats, room, guess);
    if (best === null || tried.fit > best.fit + 1e-9) best = tried;
  }
  return best !== null && best.hits >= Math.max(1, enough * (beats.length - 1)) ? best.period : null;
};

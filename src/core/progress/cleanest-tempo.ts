import { secureScore } from '../scoring/score-curve.ts';
import { median } from '../stats/median.ts';
import { likeTempoShare } from './conditions.ts';

/** One take of a line, as far as its tempo goes. */
export interface TempoTake {
  readonly day: string;
  readonly bpm: number;
  /** Score of its weakest dimension, 0 … 100. */
  readonly weakest: number;
}

export interface CleanestTempo {
  readonly bpm: number;
  /** Days on which that tempo was secure; one day is a good day, two are a habit. */
  readonly days: number;
}

/** Days that a tempo must be secure on. Our judgement. */
const wantedDays = 2;

/**
 * The fastest tempo at which every dimension of a line was secure: on two days where there is one, else on a single
 * day; null where none was. A day counts by the median of its takes within 3 % of the tempo, not by its best.
 *
 * @example 100 BPM secure on two days, 120 on one // { bpm: 100, days: 2 }
 */
export function cleanestTempo(takes: readonly TempoTake[]): CleanestTempo | null {
  let single: CleanestTempo | null = null;
  for (const bpm of [...new Set(takes.map((take) => take.bpm))].toSorted((a, b) => b - a)) {
    const days = secureDays(takes, bpm);
    if (days >= wantedDays) return { bpm, days };
    if (days > 0 && single === null) single = { bpm, days };
  }
  return single;
}

/** Days on which a tempo was secure. Takes a little faster count for it; slower ones don't. */
function secureDays(takes: readonly TempoTake[], bpm: number): number {
  const byDay = new Map<string, number[]>();
  for (const take of takes) {
    if (take.bpm < bpm || take.bpm > bpm * (1 + likeTempoShare)) continue;
    byDay.set(take.day, [...(byDay.get(take.day) ?? []), take.weakest]);
  }
  return [...byDay.values()].filter((scores) => median(scores) >= secureScore).length;
}

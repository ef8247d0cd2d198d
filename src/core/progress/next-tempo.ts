import type { Reason } from '../result/take-result.ts';
import { secureScore } from '../scoring/score-curve.ts';
import { type DimensionScores, startTempo, tempoAdvice } from '../scoring/tempo-advice.ts';
import { cleanestTempo, type TempoTake } from './cleanest-tempo.ts';
import { likeTempoShare } from './conditions.ts';

/** A kept take of one exercise, newest last. */
export interface PastTake extends TempoTake {
  readonly scores: DimensionScores | null;
  /** Its end gave way against its start. */
  readonly fading: boolean;
}

/** Takes older than this don't tell where a player stands today. Our judgement. */
export const freshDays = 28;

/**
 * What tempo to try next for one exercise, from its takes in order of time: `tempo-start` (10 to 15 % below the
 * cleanest tempo) or `tempo-start-slower` (below the one tried last, `triedBpm`, where none was clean) without a scored
 * take in the last four weeks, else what the newest take advises, where another day's take at the like tempo, secure by
 * its median, makes it "up". Discomfort noted since stops all of it. `daysAgo` tells how old a take is.
 */
export function nextTempo(
  takes: readonly PastTake[],
  {
    discomfort,
    daysAgo,
    triedBpm = takes.at(-1)?.bpm ?? null,
  }: {
    readonly discomfort: boolean;
    readonly daysAgo: (day: string) => number;
    readonly triedBpm?: number | null;
  },
): Reason {
  const newest = takes.at(-1);
  const start = () => startTempo({ cleanestBpm: cleanestTempo(takes)?.bpm ?? null, triedBpm, discomfort });
  if (newest === undefined || daysAgo(newest.day) > freshDays) return start();
  const others = takes.filter(
    ({ day, bpm }) =>
      day !== newest.day &&
      daysAgo(day) <= freshDays &&
      Math.abs(bpm - newest.bpm) <= likeTempoShare * newest.bpm,
  );
  const clean = cleanestTempo(others);
  const advice = tempoAdvice({
    scores: newest.scores,
    bpm: newest.bpm,
    discomfort,
    fading: newest.fading,
    cleanOnAnotherDay: clean !== null && newest.weakest >= secureScore,
  });
  return advice ?? start();
}

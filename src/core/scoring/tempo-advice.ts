import type { Reason } from '../result/take-result.ts';
import { nearlyScore, secureScore } from './score-curve.ts';

/** Steps of tempo advice, BPM and shares. Common practice of teachers; where to draw the lines is our judgement. */
export const tempoSteps = {
  upFromBpm: 4,
  upToBpm: 6,
  downShare: 0.1,
  lowestBpm: 40,
  startBpm: 80,
  startBelow: [0.15, 0.1],
} as const;

/** As much of a take's scores as tempo advice asks for. */
export interface DimensionScores {
  readonly dimensions: readonly { readonly id: string; readonly score: { readonly score: number } }[];
}

/** Advice about the next tempo, as against faults to work on. */
export function isTempoAdvice(code: string): boolean {
  return code.startsWith('tempo-');
}

/**
 * What to do with the tempo after one take: up only when everything is secure on two different days, down about 10 %
 * when evenness and dynamics are both short of `nearly`, else stay. One take is one day, so that `cleanOnAnotherDay`
 * has to come from the player's history. A take whose end gives way asks for rest instead. Noted discomfort comes
 * before all else and stops the advice. Null when there is no score and no discomfort.
 *
 * @example evenness 50, dynamics 55 at 120 BPM // { code: 'tempo-down', facts: { bpm: 120, toBpm: 108 } }
 */
export function tempoAdvice({
  scores,
  bpm,
  played = null,
  discomfort = false,
  cleanOnAnotherDay = false,
  fading = false,
}: {
  readonly scores: DimensionScores | null;
  /** The tempo of the take; null when its lines have several. */
  readonly bpm: number | null;
  /** The tempo that was played, where it is far off. */
  readonly played?: number | null;
  readonly discomfort?: boolean;
  readonly cleanOnAnotherDay?: boolean;
  /** The end of the take gave way against its start: that asks for rest, whatever the scores. */
  readonly fading?: boolean;
}): Reason | null {
  if (discomfort) return { code: 'tempo-waits-for-discomfort', facts: {} };
  if (!scores) return null;
  if (fading) return { code: 'tempo-after-rest', facts: bpm === null ? {} : { bpm } };
  // Neither tempo is one to stay at or to leave before it is known which of them was meant.
  if (played !== null && bpm !== null) return { code: 'tempo-settle-first', facts: { bpm, played } };
  const at: Record<string, number> = bpm === null ? {} : { bpm };
  const score = (id: string) => scores.dimensions.find((d) => d.id === id)?.score.score ?? 100;
  const short = scores.dimensions.filter((d) => d.score.score < secureScore);
  if (score('evenness') < nearlyScore && score('dynamics') < nearlyScore) {
    const slower = bpm === null ? 0 : Math.round(bpm * (1 - tempoSteps.downShare));
    if (bpm !== null && slower < tempoSteps.lowestBpm)
      return { code: 'tempo-stay', facts: { ...at, dimension: 'evenness' } };
    return { code: 'tempo-down', facts: bpm === null ? {} : { ...at, toBpm: slower } };
  }
  if (short.length > 0) {
    const weakest = short.toSorted((a, b) => a.score.score - b.score.score)[0]!;
    return { code: 'tempo-stay', facts: { ...at, dimension: weakest.id } };
  }
  const next: Record<string, number> =
    bpm === null
      ? {}
      : { fromBpm: Math.round(bpm + tempoSteps.upFromBpm), toBpm: Math.round(bpm + tempoSteps.upToBpm) };
  return { code: cleanOnAnotherDay ? 'tempo-up' : 'tempo-needs-second-day', facts: { ...at, ...next } };
}

/**
 * Where to start a line: 10 to 15 % below the player's own cleanest tempo for it; below the tempo tried last where none
 * was clean yet; at 80 BPM when nothing is known. Never below 40. Common practice; the figures are our judgement. Noted
 * discomfort stops this advice too.
 *
 * @example startTempo({ cleanestBpm: 120 }) // { code: 'tempo-start', facts: { fromBpm: 102, toBpm: 108 } }
 */
export function startTempo({
  cleanestBpm,
  triedBpm = null,
  discomfort = false,
}: {
  readonly cleanestBpm: number | null;
  /** Tempo of the newest playing, clean or not. */
  readonly triedBpm?: number | null;
  readonly discomfort?: boolean;
}): Reason {
  if (discomfort) return { code: 'tempo-waits-for-discomfort', facts: {} };
  const { startBpm, startBelow, lowestBpm } = tempoSteps;
  const below = (bpm: number) =>
    startBelow.map((share) => Math.max(lowestBpm, Math.round(bpm * (1 - share))));
  if (cleanestBpm === null && triedBpm !== null) {
    const [fromBpm, toBpm] = below(triedBpm);
    return { code: 'tempo-start-slower', facts: { bpm: triedBpm, fromBpm: fromBpm!, toBpm: toBpm! } };
  }
  const [fromBpm, toBpm] = cleanestBpm === null ? [startBpm, startBpm] : below(cleanestBpm);
  return { code: 'tempo-start', facts: { fromBpm: fromBpm!, toBpm: toBpm! } };
}

import { firstToBreak } from '../../result/breaking-words.ts';
import type { BreakingPoints, Reason } from '../../result/take-result.ts';
import { tempoSteps } from '../tempo-advice.ts';

/**
 * What to do with the tempo after a take that got faster and faster: practise at the fastest tempo that surely lies
 * under the first break; at the last one played whole where the take broke off; go further another day where nothing
 * broke; begin slower where the slowest tempo didn't hold. Null where too few tempos were played to tell.
 *
 * @example risingAdvice(breaking) // { code: 'tempo-under-break', facts: { bpm: 120, dimension: 'evenness' } }
 */
export function risingAdvice(breaking: BreakingPoints): Reason | null {
  const first = firstToBreak(breaking);
  const fastest = breaking.dimensions[0]?.scores.at(-1)?.bpm;
  if (fastest === undefined) return null;
  const { stoppedAt } = breaking;
  if (first === null && stoppedAt !== null)
    return { code: 'tempo-under-stop', facts: { bpm: fastest, stoppedBpm: stoppedAt } };
  if (first === null) return { code: 'tempo-rise-further', facts: { bpm: fastest } };
  const { id, low, scores } = first;
  const held = scores.findLast(({ bpm }) => bpm <= (low ?? 0));
  if (held !== undefined) return { code: 'tempo-under-break', facts: { bpm: held.bpm, dimension: id } };
  const slower = Math.max(tempoSteps.lowestBpm, Math.round(scores[0]!.bpm * (1 - tempoSteps.downShare)));
  return { code: 'tempo-rise-from-slower', facts: { bpm: slower, dimension: id } };
}

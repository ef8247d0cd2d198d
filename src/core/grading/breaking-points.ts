import type { Performance } from '../measures/performance.ts';
import type { Finding } from '../recording-check/heard-recording.ts';
import type { BreakingPoints, TakeResult } from '../result/take-result.ts';
import { risingLines } from '../scoring/breaking/rising-lines.ts';
import { fewestTempos, type ScoreAtTempo, tempoOfBreak } from '../scoring/breaking/tempo-of-break.ts';
import type { Rubric } from '../scoring/rubric.ts';
import { lineScores } from './line-scores.ts';

/**
 * A line of which less was played was broken off, share of its strokes. Our judgement: the last beat may be left out.
 */
const wholeShare = 0.9;

interface RisingTake {
  readonly performance: Performance;
  readonly lines: TakeResult['sheet']['lines'];
  readonly slots: Pick<TakeResult['slots'], 'line' | 'state' | 'grace'>;
  readonly rubric: Rubric;
  /** What the check of the recording found. */
  readonly findings?: readonly Finding[];
}

/** How much of a line was reached. */
function reachedOf({ slots }: RisingTake, line: number): { readonly reached: number; readonly of: number } {
  const own = slots.state.filter((_, i) => slots.line[i] === line && !slots.grace[i]);
  return { reached: own.filter((state) => state !== 'not-reached').length, of: own.length };
}

/**
 * At which tempo each dimension of an exercise breaks that the sheet asks for at four tempos or more, each faster than
 * the one before. Every line is scored as a take of its own, and `tempoOfBreak` looks where the scores fall to "not
 * yet". `stoppedAt` is the tempo of the line in which the take ends before the line does. Empty for other sheets.
 *
 * @example breakingPoints({ performance, lines, slots, rubric })[0].dimensions[0].state // 'broke'
 */
export function breakingPoints(take: RisingTake): BreakingPoints[] {
  const { performance, lines, rubric, findings = [] } = take;
  return risingLines(lines).map((own) => {
    const begun = own
      .map((line) => ({ line, bpm: lines[line]!.bpm!, ...reachedOf(take, line) }))
      .filter(({ reached }) => reached > 0);
    const scores = new Map<string, ScoreAtTempo[]>();
    for (const { line, bpm } of begun) {
      for (const { id, score } of lineScores(performance, line, rubric, findings)?.dimensions ?? []) {
        const { word: _, ...figures } = score;
        scores.set(id, [...(scores.get(id) ?? []), { bpm, ...figures }]);
      }
    }
    const last = begun.at(-1);
    const brokenOff = last !== undefined && last.reached < wholeShare * last.of;
    return {
      lines: own,
      played: begun.length,
      stoppedAt: brokenOff ? last.bpm : null,
      dimensions: rubric.dimensions.flatMap(({ id }) => {
        const points = scores.get(id) ?? [];
        return points.length < fewestTempos ? [] : [{ id, ...tempoOfBreak(points), scores: points }];
      }),
    };
  });
}

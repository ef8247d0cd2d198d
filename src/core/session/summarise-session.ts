import type { Sheet } from '../exercise/sheet.ts';
import { pointsOf } from '../scoring/measure-points.ts';
import type { Rubric } from '../scoring/rubric.ts';
import { median } from '../stats/median.ts';
import { brokeFrom, repeatFigures } from './repeat-figures.ts';
import type { SessionResult, SessionTake } from './session-result.ts';

/** What became of each line of the sheet: its plays with their repeats and scores, and which line is the weakest. */
export function summariseSession(
  sheet: Sheet,
  takes: readonly SessionTake[],
  rubric: Rubric,
): SessionResult['summary'] {
  const lines = sheet.lines.map(({ repeats: asked }, line) => {
    const plays = takes.flatMap((take, index) => {
      if (take.line !== line) return [];
      const repeats =
        take.result.grading.state === 'graded' ? repeatFigures(take.result, pointsOf(rubric)) : [];
      const score = take.result.scores?.overall.score ?? null;
      return [{ take: index, repeats, score, brokeFrom: brokeFrom(repeats) }];
    });
    const scores = plays.flatMap(({ score }) => (score === null ? [] : [score]));
    const own = takes.filter((take) => take.line === line);
    return {
      line,
      repeats: own.reduce((sum, { repeats }) => sum + repeats, 0),
      asked,
      plays,
      score: scores.length > 0 ? median(scores) : null,
    };
  });
  const scored = lines.filter(({ score }) => score !== null).toSorted((a, b) => a.score! - b.score!);
  return { lines, weakest: scored.length > 1 ? scored[0]!.line : null };
}

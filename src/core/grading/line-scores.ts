import { measures } from '../measures/index.ts';
import { partsOfTake } from '../measures/part-of-take.ts';
import { measureWithParts, partsOf } from '../measures/parts-of-measure.ts';
import type { Performance } from '../measures/performance.ts';
import type { Finding } from '../recording-check/heard-recording.ts';
import { refuseSpoiled } from '../recording-check/refuse-spoiled.ts';
import type { TakeResult } from '../result/take-result.ts';
import { handRatioGap } from '../scoring/hand-ratio-gap.ts';
import type { Rubric } from '../scoring/rubric.ts';
import { scoreTake } from '../scoring/score-take.ts';

/** Read for `hand-ratio-gap`. */
const ratio = 'accent-to-tap-ratio';

/**
 * The scores of one line as a take of its own, or null where it is too short for them. Habits, strays and the spread
 * are the line's own: in a take whose spread grows from line to line, those of the whole take would hide that.
 *
 * @example lineScores(performance, 2, steady)?.dimensions // those of the third line
 */
export function lineScores(
  performance: Performance,
  line: number,
  rubric: Rubric,
  findings: readonly Finding[] = [],
): TakeResult['scores'] {
  const [own] = partsOfTake(performance, [{ line }]) as [Performance];
  const scored = new Set(rubric.dimensions.flatMap(({ criteria }) => criteria.map(({ measure }) => measure)));
  const hands = partsOf(own).filter(({ kind }) => kind === 'hand');
  const measured = measures
    .filter(({ id }) => scored.has(id) || id === ratio)
    .flatMap((measure) => measureWithParts(measure, own, hands));
  const outcome = scoreTake({
    measures: refuseSpoiled([...measured, handRatioGap(measured, own.hands)], findings),
    lines: [performance.sheet.lines[line]!],
    strokes: own.strokes.length,
    rubric,
  });
  return outcome.state === 'scored' ? outcome.scores : null;
}

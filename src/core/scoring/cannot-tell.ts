import { isForExport } from '../result/names.ts';
import type { MeasureResult, Reason, TakeResult } from '../result/take-result.ts';
import { type AskedLine, criterionTargets } from './criterion-targets.ts';
import { measuredOutcome, sameScope } from './find-measure.ts';
import type { Rubric } from './rubric.ts';
import { nearlyScore, scoreOfValue, secureScore } from './score-curve.ts';
import type { ScoredTake } from './score-take.ts';

/** Reasons by which an exercise doesn't apply to a measure although another line would tell: worth a recording. */
const toldByAnotherLine: readonly string[] = [
  'accent-goes-with-partial',
  'hand-goes-with-partial',
  'change-goes-with-partial',
  'place-goes-with-hand',
  'pair-goes-with-hand',
  'row-goes-with-accent',
];

/** Measures of the whole take that gave no figure, gathered by the reason they share; its facts travel along. */
function notMeasured(measures: readonly MeasureResult[], handsTold: boolean): Reason[] {
  const byReason = new Map<string, { ids: string[]; reason: Reason }>();
  for (const { id, scope, outcome } of measures) {
    if (outcome.state === 'measured' || !sameScope(scope, {}) || isForExport(id)) continue;
    const { reason } = outcome;
    if (outcome.state === 'not-applicable' && !toldByAnotherLine.includes(reason.code)) continue;
    if (!handsTold && reason.code === 'hands-not-told') continue;
    const key = JSON.stringify(reason);
    const entry = byReason.get(key) ?? { ids: [], reason };
    if (!entry.ids.includes(id)) entry.ids.push(id);
    byReason.set(key, entry);
  }
  return [...byReason.values()].map(({ ids, reason }) => ({
    code: 'not-measured',
    facts: { ...reason.facts, measures: ids.join(','), reason: reason.code },
  }));
}

/**
 * Scored measures whose interval reaches from secure to below nearly, in one entry, with the strokes it would take to
 * bring the widest to half the room between the two points: an interval shrinks with the square root of the strokes.
 * A figure without any fault in it (nothing missed, no tap above an accent) is passed over.
 */
function tooWide(measures: readonly MeasureResult[], lines: readonly AskedLine[], rubric: Rubric): Reason[] {
  const open = rubric.dimensions.flatMap(({ criteria }) =>
    criteria.flatMap((criterion) =>
      criterionTargets(criterion, lines).flatMap(({ scope, perfect }) => {
        const outcome = measuredOutcome(measures, criterion.measure, scope);
        if (!outcome || outcome.value === perfect) return [];
        const score = scoreOfValue(outcome, { ...criterion, perfect });
        if (score.low >= nearlyScore || score.high < secureScore) return [];
        const wanted = (criterion.nearly - criterion.secure) / 2;
        const half = (outcome.high - outcome.low) / 2;
        const strokes = Math.ceil(outcome.strokes * Math.max(1, half / wanted) ** 2);
        return [{ measure: criterion.measure, has: outcome.strokes, strokes }];
      }),
    ),
  );
  if (open.length === 0) return [];
  const ids = [...new Set(open.map(({ measure }) => measure))];
  const has = Math.max(...open.map((o) => o.has));
  const strokes = Math.max(...open.map((o) => o.strokes));
  return [{ code: 'too-wide-to-tell', facts: { measures: ids.join(','), has, strokes } }];
}

/**
 * What the take leaves open, each with facts for the sentence that names the cheapest next recording: no click, hands
 * that can't be trusted, refused measures, dimensions without a score, intervals too wide, and, always, what sound
 * never tells.
 */
export function cannotTell({
  measures,
  lines,
  rubric,
  scored,
  reference,
  hands,
}: {
  readonly measures: readonly MeasureResult[];
  readonly lines: readonly AskedLine[];
  readonly rubric: Rubric;
  readonly scored: ScoredTake;
  readonly reference: TakeResult['reference']['kind'];
  readonly hands: TakeResult['hands'];
}): Reason[] {
  const withClick = reference === 'played-click' || reference === 'heard-click';
  const unscored =
    scored.state === 'scored'
      ? rubric.dimensions.filter((d) => !scored.scores.dimensions.some((s) => s.id === d.id)).map((d) => d.id)
      : [];
  return [
    ...(scored.state === 'not-scored' ? [scored.reason] : []),
    ...unscored.map((dimension) => ({ code: 'dimension-not-scored', facts: { dimension } })),
    ...(withClick
      ? []
      : [{ code: reference === 'fitted-tempo' ? 'no-click-no-tempo-asked' : 'no-click', facts: {} }]),
    ...(hands === 'not-told' ? [{ code: 'hands-not-told', facts: {} }] : []),
    ...notMeasured(measures, hands !== 'not-told'),
    ...tooWide(measures, lines, rubric),
    { code: 'never-from-sound', facts: {} },
  ];
}

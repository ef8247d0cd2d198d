import type { MeasurePoints, TakeResult } from '../result/take-result.ts';
import { nearlyScore, scoreOfDistance } from '../scoring/score-curve.ts';
import { extent } from '../stats/extent.ts';
import type { RepeatFigures } from './session-result.ts';

/** Fewer strokes with a deviation than this tell no unevenness (our judgement). */
const fewest = 4;

const scored = (points: readonly MeasurePoints[], measure: string, value: number): number | null => {
  const criterion = points.find((one) => one.measure === measure);
  if (criterion === undefined || typeof criterion.perfect !== 'number') return null;
  const { perfect, secure, nearly } = criterion;
  return scoreOfDistance(Math.abs(value - perfect), { perfect, secure, nearly });
};

/** Figures of each repeat of a take of one line that was played at all, in order, marked by the rubric's points. */
export function repeatFigures(
  { slots, strokes, segments }: TakeResult,
  points: readonly MeasurePoints[],
): RepeatFigures[] {
  const found: RepeatFigures[] = [];
  const graded = segments.find(({ state }) => state === 'graded');
  const { most: last } = extent(slots.repeat);
  for (let repeat = 0; repeat <= last; repeat++) {
    const own = slots.repeat.flatMap((r, i) => (r === repeat && !slots.grace[i] ? [i] : []));
    const on = own.flatMap((i) => (slots.stroke[i] === null ? [] : [{ slot: i, stroke: slots.stroke[i]! }]));
    if (on.length === 0 || graded === undefined) continue;
    const { least: from, most: to } = extent(on.map(({ stroke }) => strokes.time[stroke]!));
    const extra = strokes.role.filter(
      (role, i) =>
        (role === 'extra' || role === 'doubled') && strokes.time[i]! > from && strokes.time[i]! < to + 0.1,
    ).length;
    const missed = own.filter((i) => slots.state[i] === 'missed').length;
    const shares = on.flatMap(({ slot, stroke }) => {
      const deviation = strokes.deviationMs[stroke] ?? null;
      return deviation === null ? [] : [(deviation * graded.bpm * slots.divisions[slot]!) / 600];
    });
    const unevenShare =
      shares.length < fewest ? null : Math.sqrt(shares.reduce((sum, x) => sum + x * x, 0) / shares.length);
    const faults = scored(points, 'missed-and-extra', (100 * (missed + extra)) / own.length);
    const even = unevenShare === null ? null : scored(points, 'timing-spread-share', unevenShare);
    const scores = [faults, even].filter((score) => score !== null);
    const score = scores.length === 0 ? null : Math.min(...scores);
    found.push({ repeat, played: on.length, missed, extra, unevenShare, score });
  }
  return found;
}

/**
 * First repeat from which at least half of what follows scores below `nearly`, or null.
 *
 * @example brokeFrom([{ repeat: 0, score: 90 }, { repeat: 1, score: 40 }]) // 1
 */
export function brokeFrom(repeats: readonly Pick<RepeatFigures, 'repeat' | 'score'>[]): number | null {
  const weak = repeats.map(({ score }) => score !== null && score < nearlyScore);
  const at = weak.findIndex((is, i) => is && 2 * weak.slice(i).filter(Boolean).length >= weak.length - i);
  return at < 0 ? null : repeats[at]!.repeat;
}

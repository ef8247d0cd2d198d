import { spreadOf } from './spread-of.ts';

/** Strokes that one picture shows at most; more would run into one another. Our judgement. */
export const pointsShown = 450;

/** Of so many strokes, how many a picture shows that has room for `limit`. */
export const shownOf = (count: number, limit: number = pointsShown): number => Math.min(count, limit);

/** Share of the shown points that goes to those farthest from the middle, so that no stray stroke gets lost. */
const farthestShare = 0.2;

/**
 * Keeps at most `limit` of many points: the ones farthest from the middle height, and of the others one in so many.
 * Points stay in order; few points come back as they are.
 */
export function thinOut<P extends { readonly y: number }>(points: readonly P[], limit: number): readonly P[] {
  if (points.length <= limit) return points;
  const { middle } = spreadOf(points.map((point) => point.y))!;
  const farthest = Math.max(1, Math.floor(limit * farthestShare));
  const byDistance = points
    .map((point, at) => ({ at, distance: Math.abs(point.y - middle) }))
    .sort((a, b) => b.distance - a.distance || a.at - b.at);
  const kept = new Set(byDistance.slice(0, farthest).map(({ at }) => at));
  const others = points.flatMap((_, at) => (kept.has(at) ? [] : [at]));
  const places = Math.max(0, limit - farthest);
  for (let i = 0; i < places; i++) kept.add(others[Math.floor((i * others.length) / places)]!);
  return points.filter((_, at) => kept.has(at));
}

/** Which of so many strokes a picture shows, as the beginning of a sentence. */
export function whichStrokes(count: number): string {
  const shown = shownOf(count);
  if (shown === count) return 'Every graded stroke';
  return `At most ${shown} of the ${count} graded strokes, the ones farthest off among them`;
}

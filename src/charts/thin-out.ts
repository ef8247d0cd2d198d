/** Points one series may hold before it is thinned; about what can be told apart on a wide screen. Our judgement. */
export const pointsShown = 900;

/**
 * Keeps at most `limit` of many points: `x` is cut into equal columns and each keeps its lowest, its middle and its
 * highest point, so that neither stray strokes nor the run of the rest get lost. Points stay in order; few points
 * come back as they are.
 */
export function thinOut<P extends { readonly x: number; readonly y: number }>(
  points: readonly P[],
  limit: number = pointsShown,
): readonly P[] {
  if (points.length <= limit) return points;
  const columns = Math.max(1, Math.floor(limit / 3));
  const xs = points.map((point) => point.x);
  const first = xs.reduce((a, b) => Math.min(a, b));
  const width = (xs.reduce((a, b) => Math.max(a, b)) - first) / columns || 1;
  const inColumn = Array.from({ length: columns }, (): number[] => []);
  points.forEach((point, i) => {
    inColumn[Math.min(columns - 1, Math.floor((point.x - first) / width))]!.push(i);
  });
  const kept = new Set<number>();
  for (const members of inColumn) {
    if (members.length === 0) continue;
    const byHeight = [...members].sort((a, b) => points[a]!.y - points[b]!.y);
    kept
      .add(byHeight[0]!)
      .add(byHeight[byHeight.length >> 1]!)
      .add(byHeight.at(-1)!);
  }
  return points.filter((_, i) => kept.has(i));
}

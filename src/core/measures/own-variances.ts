const passes = 40;

/**
 * Variance of each group of strokes by itself, where a local line mixes them: a residual is a weighted sum of its
 * neighbours' deviations, so a loose hand stirs the line from which a steady one is measured. By the method of moments
 * the mean squares are solved for variances (Rao's MINQUE of 1970 with equal prior weights, quoted from memory).
 *
 * `squares`: squared residuals; `shares`: for each of them what a unit of variance in each group adds to it, one row a
 * stroke; `group`: which group it belongs to, −1 where it isn't judged. Groups without strokes get 0.
 *
 * @example ownVariances({ squares: [4, 1], shares: [1, 0, 0, 1], group: [0, 1], groups: 2 }) // [4, 1]
 */
export function ownVariances(taken: {
  readonly squares: ArrayLike<number>;
  readonly shares: ArrayLike<number>;
  readonly group: ArrayLike<number>;
  readonly groups: number;
}): Float64Array {
  const { squares, shares, group, groups } = taken;
  const counts = new Float64Array(groups);
  const sums = new Float64Array(groups);
  const mixed = new Float64Array(groups * groups);
  for (let i = 0; i < squares.length; i++) {
    const g = group[i]!;
    if (g < 0) continue;
    counts[g]!++;
    sums[g]! += squares[i]!;
    for (let h = 0; h < groups; h++) mixed[g * groups + h]! += shares[i * groups + h]!;
  }
  const variances = sums.map((sum, g) => (counts[g]! > 0 ? sum / counts[g]! : 0));
  // A stroke's own share outweighs its neighbours', so this settles on the one solution.
  for (let pass = 0; pass < passes; pass++) {
    for (let g = 0; g < groups; g++) {
      const own = mixed[g * groups + g]!;
      if (!(own > 0)) continue;
      let others = 0;
      for (let h = 0; h < groups; h++) if (h !== g) others += mixed[g * groups + h]! * variances[h]!;
      variances[g] = Math.max(0, (sums[g]! - others) / own);
    }
  }
  return variances;
}

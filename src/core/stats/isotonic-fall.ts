/** One value and how much it counts. */
export interface Weighted {
  readonly value: number;
  readonly weight: number;
}

/**
 * The falling sequence nearest to the values by weighted least squares: neighbours that rise are pooled until none do
 * (pool adjacent violators; Barlow, Bartholomew, Bremner & Brunk 1972, quoted from memory). Linear.
 *
 * @example isotonicFall([{ value: 3, weight: 1 }, { value: 1, weight: 1 }, { value: 2, weight: 1 }]) // [3, 1.5, 1.5]
 */
export function isotonicFall(values: readonly Weighted[]): number[] {
  const pools: { value: number; weight: number; count: number }[] = [];
  for (const { value, weight } of values) {
    let pool = { value, weight, count: 1 };
    for (
      let before = pools.at(-1);
      before !== undefined && before.value < pool.value;
      before = pools.at(-1)
    ) {
      pools.pop();
      const total = before.weight + pool.weight;
      pool = {
        value: (before.value * before.weight + pool.value * pool.weight) / total,
        weight: total,
        count: before.count + pool.count,
      };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ value, count }) => Array.from({ length: count }, () => value));
}

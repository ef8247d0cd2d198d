/** Five places in a sorted set of values. */
export interface Spread {
  readonly count: number;
  readonly lowest: number;
  readonly lowerQuarter: number;
  readonly middle: number;
  readonly upperQuarter: number;
  readonly highest: number;
}

/**
 * Count, extremes, quartiles and median; null for no values. Quantiles interpolate linearly between order
 * statistics, position (n − 1)p (Hyndman & Fan 1996, definition 7).
 *
 * @example spreadOf([4, 1, 3, 2]) // lowest 1, lowerQuarter 1.75, middle 2.5, upperQuarter 3.25, highest 4
 */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const at = (p: number): number => {
    const position = (sorted.length - 1) * p;
    const below = sorted[Math.floor(position)]!;
    return below + (sorted[Math.ceil(position)]! - below) * (position - Math.floor(position));
  };
  return {
    count: sorted.length,
    lowest: at(0),
    lowerQuarter: at(0.25),
    middle: at(0.5),
    upperQuarter: at(0.75),
    highest: at(1),
  };
}

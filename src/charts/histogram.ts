/** Counts of values in bins of equal width. */
interface Histogram {
  readonly width: number;
  /** Middle of the first bin. */
  readonly first: number;
  readonly counts: readonly number[];
}

const widths = [1, 2, 4, 5, 10, 20, 50, 100];

/**
 * The width of bin that suits values of this spread: the round one nearest to 2·IQR/∛n
 * (Freedman & Diaconis 1981, quoted from memory).
 */
export function binWidth(interquartileRange: number, count: number): number {
  const wanted = Math.max(0.1, (2 * interquartileRange) / Math.cbrt(Math.max(1, count)));
  const distance = (width: number) => Math.abs(Math.log(width / wanted));
  return widths.reduce((best, width) => (distance(width) < distance(best) ? width : best));
}

/**
 * Counts values in bins centred on whole multiples of `width`, from `−reach` to `reach`; what lies beyond falls into
 * the outermost bins.
 *
 * @example histogram([0, 1, -9, 50], 4, 8).counts // [1, 0, 2, 0, 1]
 */
export function histogram(values: readonly number[], width: number, reach: number): Histogram {
  const side = Math.ceil(reach / width);
  const counts = new Array<number>(2 * side + 1).fill(0);
  for (const value of values) {
    const bin = Math.min(side, Math.max(-side, Math.round(value / width)));
    counts[bin + side]! += 1;
  }
  return { width, first: -side * width, counts };
}

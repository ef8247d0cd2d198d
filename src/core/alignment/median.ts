/** Middle value (mean of the two middle ones); NaN for none. */
export const median = (values: ArrayLike<number>): number => {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

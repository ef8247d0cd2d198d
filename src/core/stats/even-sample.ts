/**
 * At most `most` of some values, spread evenly over them, in their order.
 *
 * @example evenSample([1, 2, 3, 4, 5, 6], 3) // [1, 3, 5]
 */
export function evenSample<T>(values: readonly T[], most: number): readonly T[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, i) => values[Math.floor((i * values.length) / most)]!);
}

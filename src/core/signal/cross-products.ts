/**
 * Σ sound[i]·heard[i + shift] over the first `count` samples of `sound`, for the shifts 0 … shifts − 1.
 *
 * @example crossProducts([1, 2], [3, 4, 5], 2, 2) // 11, 14
 */
export function crossProducts(
  sound: Float32Array | Float64Array,
  heard: Float32Array,
  count: number,
  shifts: number,
): Float64Array {
  const products = new Float64Array(shifts);
  let shift = 0;
  // Four sums grow side by side: they share each sample read, and none waits for itself.
  for (; shift + 4 <= shifts; shift += 4) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let first = heard[shift]!;
    let second = heard[shift + 1]!;
    let third = heard[shift + 2]!;
    for (let i = 0; i < count; i++) {
      const x = sound[i]!;
      const fourth = heard[i + shift + 3]!;
      a += x * first;
      b += x * second;
      c += x * third;
      d += x * fourth;
      first = second;
      second = third;
      third = fourth;
    }
    products[shift] = a;
    products[shift + 1] = b;
    products[shift + 2] = c;
    products[shift + 3] = d;
  }
  for (; shift < shifts; shift++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += sound[i]! * heard[i + shift]!;
    products[shift] = sum;
  }
  return products;
}

/**
 * Where an increasing function crosses zero inside a bracket: bisection's safety with regula falsi's speed
 * (the Illinois rule). Returns the nearer end when the bracket holds no crossing.
 *
 * @example solveIncreasing((x) => x * x - 2, 0, 2) // √2
 */
export function solveIncreasing(f: (x: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  let atLow = f(low);
  let atHigh = f(high);
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  let side = 0;
  for (let i = 0; i < 200 && high - low > 1e-14 * (Math.abs(low) + Math.abs(high)); i++) {
    const falsi = (low * atHigh - high * atLow) / (atHigh - atLow);
    // Every third step halves, so that a flat stretch can't hold the crossing up.
    const x = i % 3 === 2 || !(falsi > low && falsi < high) ? (low + high) / 2 : falsi;
    const y = f(x);
    if (y === 0) return x;
    if (y < 0) {
      low = x;
      atLow = y;
      if (side === -1) atHigh /= 2;
      side = -1;
    } else {
      high = x;
      atHigh = y;
      if (side === 1) atLow /= 2;
      side = 1;
    }
  }
  return (low + high) / 2;
}

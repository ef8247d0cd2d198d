/** Moments of a row of intervals less their line, and the two variances that they are taken for; the unit squared. */
interface ClockAndMotorVariance {
  readonly intervals: number;
  /** Autocovariances at lag 0, with n − 2 for divisor, and at lag 1, with the number of pairs. */
  readonly lagZero: number;
  readonly lagOne: number;
  /** γ(0) + 2γ(1) and −γ(1): either is below 0 where the model doesn't hold or the row is short. */
  readonly clock: number;
  readonly motor: number;
}

/**
 * Variance of the interval kept in mind and of the movement out of a row of at least three intervals played without a
 * click: each is one tick of a clock plus the difference of two movements, so that γ(1) = −motor and γ(0) = clock +
 * 2 motor (Wing & Kristofferson 1973). The straight line of the row is taken off first, since drift looks like memory.
 * `place` (ascending) numbers the intervals where some are missing: only those one apart are neighbours. RangeError
 * under three intervals or without neighbours.
 *
 * @example intervals 1, 2, 1, 2, 1 // lagZero 0.4, lagOne −0.24 and so clock −0.08, motor 0.24
 */
export function clockAndMotorVariance(
  lengths: ArrayLike<number>,
  place?: ArrayLike<number>,
): ClockAndMotorVariance {
  const n = lengths.length;
  if (n < 3) throw new RangeError('three intervals are needed');
  const middle = (n - 1) / 2;
  let centre = 0;
  let tilt = 0;
  for (let k = 0; k < n; k++) {
    centre += lengths[k]! / n;
    tilt += ((k - middle) * lengths[k]!) / ((n * (n * n - 1)) / 12);
  }
  const rest = Float64Array.from(lengths, (length, k) => length - centre - tilt * (k - middle));
  let squares = 0;
  let products = 0;
  let pairs = 0;
  for (let k = 0; k < n; k++) {
    squares += rest[k]! ** 2;
    if (k === 0 || (place !== undefined && place[k]! - place[k - 1]! !== 1)) continue;
    products += rest[k]! * rest[k - 1]!;
    pairs++;
  }
  if (pairs === 0) throw new RangeError('no two intervals are neighbours');
  const lagZero = squares / (n - 2);
  const lagOne = products / pairs;
  return { intervals: n, lagZero, lagOne, clock: lagZero + 2 * lagOne, motor: -lagOne };
}

/** Direction and concentration of angles, in radians. */
interface CircularSummary {
  /** Mean direction, −π … π. */
  readonly direction: number;
  /** Length of the mean vector: 0 all round, 1 all alike. */
  readonly resultant: number;
  /** Chance of so long a vector from angles that lie anywhere: Rayleigh's test. */
  readonly p: number;
}

/** From so many angles on the series has nothing to add. */
const large = 50;

/**
 * Mean direction, resultant length and Rayleigh's test of one or more angles, such as places within a beat as shares of
 * a turn. p = e^−z with z = n R̄², below 50 angles with the correction 1 + (2z − z²)/4n − (24z − 132z² + 76z³ −
 * 9z⁴)/288n² (Mardia & Jupp 2000, section 6.3.1, quoted from memory). RangeError without angles.
 *
 * @example circularSummary([0, Math.PI / 2]) // direction π/4 and resultant √½
 */
export function circularSummary(angles: ArrayLike<number>): CircularSummary {
  const n = angles.length;
  if (n === 0) throw new RangeError('no angles');
  let sine = 0;
  let cosine = 0;
  for (let i = 0; i < n; i++) {
    sine += Math.sin(angles[i]!);
    cosine += Math.cos(angles[i]!);
  }
  const resultant = Math.hypot(sine, cosine) / n;
  const z = n * resultant ** 2;
  const series =
    1 + (2 * z - z ** 2) / (4 * n) - (24 * z - 132 * z ** 2 + 76 * z ** 3 - 9 * z ** 4) / (288 * n ** 2);
  const p = Math.min(1, Math.max(0, Math.exp(-z) * (n < large ? series : 1)));
  return { direction: Math.atan2(sine, cosine), resultant, p };
}

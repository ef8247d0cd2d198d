import { studentTCdf } from './student-t-cdf.ts';

/** Chance that any of so many normal values is marked. */
const falseAlarm = 0.01;
const mostMarked = 0.1;

/**
 * Marks (1) values too far from the mean of their group to belong to a normal distribution whose spread the groups
 * share (group: numbers from 0): Rosner's generalised extreme Studentised deviate test (1983), for one group as in the NIST/SEMATECH e-Handbook
 * 1.3.5.17.3, with the groups' means fitted for several. The furthest value is taken out again and again, up to a tenth
 * of all, so that outliers can't hide each other; α is 0.01 unless given.
 * Example: outliers([1, 2, 3, 2, 1, 2, 3, 2, 1, 90], new Int32Array(10)) marks the last alone.
 */
export function outliers(
  values: ArrayLike<number>,
  group: ArrayLike<number>,
  { alpha = falseAlarm, most = Math.floor(values.length * mostMarked) } = {},
): Uint8Array {
  const n = values.length;
  const taken = new Uint8Array(n);
  const order: number[] = [];
  let certain = 0;
  let groups = 0;
  for (let i = 0; i < n; i++) groups = Math.max(groups, group[i]! + 1);
  const size = new Int32Array(groups);
  const total = new Float64Array(groups);
  const add = (i: number, sign: 1 | -1) => {
    size[group[i]!]! += sign;
    total[group[i]!]! += sign * values[i]!;
  };
  for (let i = 0; i < n; i++) add(i, 1);
  for (let step = 0; step < most; step++) {
    const left = n - step;
    const free = left - size.reduce((count, inside) => count + (inside > 0 ? 1 : 0), 0);
    if (free < 3) break;
    let squares = 0;
    let furthest = -1;
    let distance = 0;
    for (let i = 0; i < n; i++) {
      const inside = size[group[i]!]!;
      if (taken[i] === 1 || inside < 2) continue;
      const off = Math.abs(values[i]! - total[group[i]!]! / inside);
      squares += off * off;
      const scaled = off / Math.sqrt(1 - 1 / inside);
      if (scaled <= distance) continue;
      distance = scaled;
      furthest = i;
    }
    if (furthest === -1) break;
    const studentised = (distance * distance * free) / squares;
    // Externally Studentised: all but the value itself.
    const t = Math.sqrt((studentised * (free - 1)) / Math.max(free - studentised, Number.MIN_VALUE));
    taken[furthest] = 1;
    add(furthest, -1);
    order.push(furthest);
    if (2 * studentTCdf(-t, free - 1) * left < alpha) certain = step + 1;
  }
  const marks = new Uint8Array(n);
  for (const i of order.slice(0, certain)) marks[i] = 1;
  return marks;
}

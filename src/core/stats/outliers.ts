import { studentTCdf } from './student-t-cdf.ts';

/** Chance that any of so many normal values is marked, and the largest share that may be. Our judgement. */
const falseAlarm = 0.01;
const mostMarked = 0.1;

/**
 * Marks (1) values too far from the mean of their group to belong to a normal distribution whose spread the groups
 * share (group: numbers from 0): Rosner's generalised extreme Studentised deviate test (1983), for one group as in the
 * NIST/SEMATECH e-Handbook 1.3.5.17.3, with the groups' means fitted for several. The furthest value is taken out again
 * and again, up to a tenth of all, so that outliers can't hide each other; α is 0.01 unless given. The furthest of a
 * group is one of its ends, so sorting once does: n log n.
 *
 * @example outliers([1, 2, 3, 2, 1, 2, 3, 2, 1, 90], new Int32Array(10)) // the last alone
 */
export function outliers(
  values: ArrayLike<number>,
  group: ArrayLike<number>,
  { alpha = falseAlarm, most = Math.floor(values.length * mostMarked) } = {},
): Uint8Array {
  const groups = inGroups(values, group);
  const order: number[] = [];
  let certain = 0;
  let left = values.length;
  for (let step = 0; step < most; step++, left--) {
    const free = left - groups.reduce((count, { from, to }) => count + (to > from ? 1 : 0), 0);
    if (free < 3) break;
    let squares = 0;
    let furthest: Furthest | null = null;
    for (const one of groups) {
      if (one.to - one.from < 2) continue;
      squares += one.squares;
      const end = furthestIn(one);
      if (furthest === null || end.distance > furthest.distance) furthest = end;
    }
    if (furthest === null) break;
    const { distance } = furthest;
    if (distance === 0) break;
    const studentised = (distance * distance * free) / squares;
    // Externally Studentised: all but the value itself.
    const t = Math.sqrt((studentised * (free - 1)) / Math.max(free - studentised, Number.MIN_VALUE));
    order.push(takeOut(furthest));
    if (2 * studentTCdf(-t, free - 1) * left < alpha) certain = step + 1;
  }
  const marks = new Uint8Array(values.length);
  for (const i of order.slice(0, certain)) marks[i] = 1;
  return marks;
}

/** The values of a group that are left, in order: the furthest is always at one of its ends. */
interface Group {
  /** Distances from the group's first mean, ascending, and whose they are. */
  readonly sorted: Float64Array;
  readonly places: Uint32Array;
  from: number;
  to: number;
  /** Sum of what is left, and of its squared distances from its own mean. */
  total: number;
  squares: number;
  /** What the squares were when they were last added up: taking away from a sum costs digits. */
  squaresAdded: number;
}

/** So much smaller than when they were added up, sums are added up anew. */
const fewDigitsLeft = 1e-4;

interface Furthest {
  readonly group: Group;
  readonly atEnd: boolean;
  /** From the group's mean, scaled by its spread there. */
  readonly distance: number;
}

function inGroups(values: ArrayLike<number>, group: ArrayLike<number>): Group[] {
  const members: number[][] = [];
  for (let i = 0; i < values.length; i++) {
    const places = members[group[i]!];
    if (places) places.push(i);
    else members[group[i]!] = [i];
  }
  return members.filter(Boolean).map((places) => {
    places.sort((a, b) => values[a]! - values[b]! || a - b);
    const mean = places.reduce((sum, i) => sum + values[i]!, 0) / places.length;
    const sorted = Float64Array.from(places, (i) => values[i]! - mean);
    const one = { sorted, places: Uint32Array.from(places), from: 0, to: places.length };
    return added({ ...one, total: 0, squares: 0, squaresAdded: 0 });
  });
}

function furthestIn(group: Group): Furthest {
  const { sorted, from, to, total } = group;
  const inside = to - from;
  const mean = total / inside;
  const below = mean - sorted[from]!;
  const above = sorted[to - 1]! - mean;
  const atEnd = above > below;
  return { group, atEnd, distance: Math.max(above, below) / Math.sqrt(1 - 1 / inside) };
}

/** Takes the furthest value out of its group; its index. */
function takeOut({ group, atEnd }: Furthest): number {
  const at = atEnd ? --group.to : group.from++;
  const inside = group.to - group.from;
  const value = group.sorted[at]!;
  const off = value - (group.total - value) / inside;
  group.total -= value;
  group.squares -= (off * off * inside) / (inside + 1);
  if (!(group.squares > fewDigitsLeft * group.squaresAdded)) added(group);
  return group.places[at]!;
}

/** The group with its sums added up from what is left. */
function added(group: Group): Group {
  const left = group.sorted.subarray(group.from, group.to);
  group.total = left.reduce((sum, x) => sum + x, 0);
  const mean = group.total / left.length;
  group.squares = left.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  group.squaresAdded = group.squares;
  return group;
}

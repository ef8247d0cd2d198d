/** Positions along the beat, cut into stretches, with a mark on those that the lines may rest on. */
interface Course {
  /** Beats, ascending within a stretch. */
  readonly position: Float64Array;
  readonly stretch: Int32Array;
  readonly used: Uint8Array;
}

/** A local straight line at every place: a linear map from a column of values to fits and slopes. */
export interface LocalLines {
  /** 0 where too few used values lie round a place; fits there are 0. */
  readonly possible: Uint8Array;
  readonly fit: (column: Float64Array) => Float64Array;
  /** Change of the column a beat. */
  readonly slope: (column: Float64Array) => Float64Array;
  /** Variance of (value − fit) for independent values of variance 1. */
  readonly residualVariance: Float64Array;
  /**
   * The same by groups of values, each of variance 1 alone: one row a place, `groups` long; `group` tells whose a value
   * is.
   */
  readonly residualShares: (group: ArrayLike<number>, groups: number) => Float64Array;
}

/** Half the window, in beats. Part of what "local" means in every figure that rests on it. Our judgement. */
export const halfWindow = 2;
/** Strokes below which a window has no line (our judgement: two more than fix one). */
const fewest = 4;
/** Beats that rounding may move a stroke by; no two slots lie nearer. */
const tolerance = 1e-6;

/**
 * Least-squares lines over a window of four beats round each place, with half weight for values exactly on its ends,
 * so that a pattern that repeats every beat, every two or every four leaves no ripple in them. Near the ends of a
 * stretch the nearest full window serves; a stretch shorter than the window is fitted whole. The window is fixed in
 * beats: fits don't depend on how long the take is.
 */
export function localLines({ position, stretch, used }: Course): LocalLines {
  const n = position.length;
  const from = new Int32Array(n);
  const to = new Int32Array(n);
  const centre = new Float64Array(n);
  const isFull = new Uint8Array(n);
  const possible = new Uint8Array(n);
  const residualVariance = new Float64Array(n);
  const firstOf = new Map<number, number>();
  const lastOf = new Map<number, number>();
  for (let i = 0; i < n; i++) {
    if (!firstOf.has(stretch[i]!)) firstOf.set(stretch[i]!, i);
    lastOf.set(stretch[i]!, i);
  }
  let low = 0;
  for (let i = 0; i < n; i++) {
    const first = firstOf.get(stretch[i]!)!;
    const last = lastOf.get(stretch[i]!)!;
    const begin = position[first]!;
    const end = position[last]!;
    const half = Math.min(halfWindow, (end - begin) / 2);
    const middle = Math.min(Math.max(position[i]!, begin + half), end - half);
    low = Math.max(low, first);
    while (position[low]! < middle - half - tolerance) low++;
    let high = low;
    while (high < last && position[high + 1]! <= middle + half + tolerance) high++;
    from[i] = low;
    to[i] = high + 1;
    centre[i] = middle;
    isFull[i] = half === halfWindow ? 1 : 0;
  }

  // The weights of all places behind each other: an array for each of a long take's strokes costs several times the
  // room.
  const begins = new Int32Array(n + 1);
  for (let i = 0; i < n; i++) begins[i + 1] = begins[i]! + to[i]! - from[i]!;
  const fits = new Float64Array(begins[n]!);
  const slopes = new Float64Array(begins[n]!);
  const weight = new Float64Array(from.reduce((most, low, i) => Math.max(most, to[i]! - low), 0));
  for (let i = 0; i < n; i++) {
    const [first, end] = [from[i]!, to[i]!];
    let count = 0;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    for (let j = first; j < end; j++) {
      weight[j - first] = 0;
      if (used[j] === 0) continue;
      const x = position[j]! - centre[i]!;
      const k = isFull[i] === 1 && Math.abs(x) > halfWindow - tolerance ? 0.5 : 1;
      weight[j - first] = k;
      count++;
      s0 += k;
      s1 += k * x;
      s2 += k * x * x;
    }
    const determinant = s0 * s2 - s1 * s1;
    if (count < fewest || !(determinant > 0)) continue;
    possible[i] = 1;
    const at = position[i]! - centre[i]!;
    let variance = used[i] === 1 ? 0 : 1;
    for (let j = first; j < end; j++) {
      const x = position[j]! - centre[i]!;
      const k = weight[j - first]!;
      const tilt = (k * (s0 * x - s1)) / determinant;
      const fit = (k * (s2 - s1 * x)) / determinant + at * tilt;
      slopes[begins[i]! + j - first] = tilt;
      fits[begins[i]! + j - first] = fit;
      variance += ((j === i && used[i] === 1 ? 1 : 0) - fit) ** 2;
    }
    residualVariance[i] = variance;
  }
  const applied = (weights: Float64Array) => (column: Float64Array) => {
    const out = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = from[i]!, w = begins[i]!; j < to[i]!; j++, w++) sum += weights[w]! * column[j]!;
      out[i] = sum;
    }
    return out;
  };
  const residualShares = (group: ArrayLike<number>, groups: number) => {
    const shares = new Float64Array(n * groups);
    for (let i = 0; i < n; i++) {
      if (possible[i] === 0) continue;
      for (let j = from[i]!, w = begins[i]!; j < to[i]!; j++, w++) {
        const own = j === i ? 1 : 0;
        const g = group[j]!;
        if (g >= 0) shares[i * groups + g]! += (own - fits[w]!) ** 2;
      }
    }
    return shares;
  };
  return { possible, fit: applied(fits), slope: applied(slopes), residualVariance, residualShares };
}

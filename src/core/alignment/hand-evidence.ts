import { cholesky, solveLower } from '../stats/cholesky.ts';
import { fTail } from '../stats/f-tail.ts';
import { type HandContrasts, type HandStroke, handContrasts } from './hand-contrasts.ts';

/** What the sound says of the written hands. */
export interface HandEvidence {
  /**
   * `confirmed`: strokes written for different hands sound different, the same way throughout (or with whole segments
   * the other way round, see `swapped`); `contradicted`: they change places within a segment; `nothing`: can't be told.
   */
  readonly says: 'confirmed' | 'contradicted' | 'nothing';
  /** Segments led by the other hand than the larger part of the take. */
  readonly swapped: ReadonlySet<number>;
  /** Chance of a contrast as large between hands that sound alike. */
  readonly chance: number;
  /** Distance between the hands, in spreads of single strokes. */
  readonly distance: number;
}

/**
 * Claims are made below this chance, and from this distance on: about three strokes in ten beyond the middle. These and
 * the next by our judgement; measured on rendered takes.
 */
const mostChance = 0.001;
const leastDistance = 1;
/** Strokes looked at together when hands may have changed places, and how surely they must be the other way round. */
const chunk = 36;
const surelyOther = -3.5;
const nothing: HandEvidence = { says: 'nothing', swapped: new Set(), chance: 1, distance: 0 };

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

/** Hotelling's test for two groups (Hotelling 1931), hands as given; null where there are too few strokes. */
const contrast = (
  { sound, figures, freedom }: HandContrasts,
  hand: Float64Array,
): { readonly chance: number; readonly distance: number } | null => {
  // The contrast itself takes one degree of freedom.
  const free = freedom - 1;
  const left = free - figures + 1;
  if (left < figures) return null;
  const size = dot(hand, hand);
  if (size < 1e-9) return null;
  const difference = new Float64Array(figures);
  sound.forEach((row, i) => {
    for (let f = 0; f < figures; f++) difference[f]! += (row[f]! * hand[i]!) / size;
  });
  const spread = Array.from({ length: figures }, () => new Float64Array(figures));
  const rest = new Float64Array(figures);
  sound.forEach((row, i) => {
    for (let f = 0; f < figures; f++) rest[f] = row[f]! - difference[f]! * hand[i]!;
    for (let f = 0; f < figures; f++) {
      for (let g = 0; g <= f; g++) spread[f]![g]! += (rest[f]! * rest[g]!) / free;
    }
  });
  const lower = cholesky(spread);
  if (lower === null) return null;
  const whitened = solveLower(lower, difference);
  const t2 = size * dot(whitened, whitened);
  return {
    chance: fTail((left / (free * figures)) * t2, figures, left),
    distance: Math.sqrt(Math.max(0, t2 - figures) / size),
  };
};

/** Sum of vectors, each as often as its weight says. */
const weighted = (vectors: readonly Float64Array[], weights: readonly number[]): Float64Array => {
  const sum = new Float64Array(vectors[0]?.length ?? 0);
  vectors.forEach((vector, k) => {
    for (let f = 0; f < sum.length; f++) sum[f]! += weights[k]! * vector[f]!;
  });
  return sum;
};

/** Cuts each segment's strokes into stretches of about equal length. */
const stretches = (segment: readonly number[]): number[][] => {
  const bySegment = new Map<number, number[]>();
  segment.forEach((index, i) => {
    if (!bySegment.has(index)) bySegment.set(index, []);
    bySegment.get(index)!.push(i);
  });
  return [...bySegment.values()].flatMap((rows) => {
    const parts = Math.max(1, Math.round(rows.length / chunk));
    return Array.from({ length: parts }, (_, p) =>
      rows.slice(Math.floor((p * rows.length) / parts), Math.floor(((p + 1) * rows.length) / parts)),
    );
  });
};

/** The stretches in which hands surely sound the other way round than in the larger part of the take. */
const turned = ({ sound, hand, figures }: HandContrasts, parts: readonly number[][]): boolean[] => {
  const none = parts.map(() => false);
  const spread = Array.from({ length: figures }, (_, f) =>
    Float64Array.from(
      { length: figures },
      (_, g) => sound.reduce((sum, row) => sum + row[f]! * row[g]!, 0) / sound.length,
    ),
  );
  const lower = cholesky(spread);
  if (lower === null) return none;
  const sums = parts.map((rows) => {
    const sum = new Float64Array(figures);
    for (const i of rows) for (let f = 0; f < figures; f++) sum[f]! += hand[i]! * sound[i]![f]!;
    return solveLower(lower, sum);
  });
  // The signs that agree best: the first eigenvector of how the stretches agree with each other.
  let signs = parts.map((_, k) => 1 + k / (10 * parts.length));
  for (let round = 0; round < 100; round++) {
    const all = weighted(sums, signs);
    const next = sums.map((one) => dot(one, all));
    const length = Math.hypot(...next) || 1;
    signs = next.map((x) => x / length);
  }
  const size = (k: number) => parts[k]!.length;
  const balance = signs.reduce((sum, sign, k) => sum + Math.sign(sign) * size(k), 0);
  const way = signs.map((sign) => Math.sign(sign) * (balance < 0 ? -1 : 1));
  const all = weighted(sums, way);
  return parts.map((rows, k) => {
    if (way[k]! >= 0) return false;
    const others = all.map((x, f) => x - way[k]! * sums[k]![f]!);
    const scale = Math.sqrt(rows.reduce((sum, i) => sum + hand[i]! ** 2, 0) * dot(others, others));
    return scale > 0 && dot(sums[k]!, others) / scale < surelyOther;
  });
};

/**
 * Whether the strokes' timbre splits by the written hands, among like strokes and apart from their level. A take that
 * is swapped as a whole sounds like one that isn't, so the larger part counts as written.
 *
 * @example handEvidence([]).says // 'nothing'
 */
export const handEvidence = (strokes: readonly HandStroke[]): HandEvidence => {
  const contrasts = handContrasts(strokes);
  if (contrasts === null) return nothing;
  const parts = stretches(contrasts.segment);
  const other = turned(contrasts, parts);
  const hand = contrasts.hand.slice();
  parts.forEach((rows, k) => {
    if (other[k]) for (const i of rows) hand[i]! *= -1;
  });
  const found = contrast(contrasts, hand);
  if (found === null) return nothing;
  // Every choice of stretches is one more chance to find something.
  const tries = other.includes(true) ? 2 ** (parts.length - 1) : 1;
  const chance = Math.min(1, found.chance * tries);
  const { distance } = found;
  if (chance > mostChance || distance < leastDistance) return { ...nothing, chance, distance };
  const segmentOf = (k: number) => contrasts.segment[parts[k]![0]!]!;
  const touched = new Set(parts.flatMap((_, k) => (other[k] ? [segmentOf(k)] : [])));
  const mixed = parts.some((_, k) => !other[k] && touched.has(segmentOf(k)));
  return mixed
    ? { says: 'contradicted', swapped: new Set(), chance, distance }
    : { says: 'confirmed', swapped: touched, chance, distance };
};

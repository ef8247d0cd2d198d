import type { Hand } from '../exercise/sheet.ts';
import { type Timbre, timbreError } from '../onsets/timbre.ts';
import { mad, madToSd } from '../stats/mad.ts';
import { mean } from '../stats/mean.ts';
import { median } from '../stats/median.ts';

/** A graded stroke with what its hand is looked for in. */
export interface HandStroke {
  /** As written; null where it can't be told from the sheet. */
  readonly hand: Hand | null;
  /** Strokes of equal circumstances (accent, place, partial) share this word: only they are compared. */
  readonly like: string;
  readonly segment: number;
  readonly levelDb: number;
  readonly timbre: Timbre | null;
}

/** Strokes that can be compared, with what circumstances and level explain taken out of everything. */
export interface HandContrasts {
  readonly segment: readonly number[];
  /** +½ for the right hand, −½ for the left. */
  readonly hand: Float64Array;
  /** Sound of each stroke: one row a stroke, dB. */
  readonly sound: readonly (readonly number[])[];
  /** Figures per stroke, and degrees of freedom left by what was taken out. */
  readonly figures: number;
  readonly freedom: number;
}

/** A stroke whose timbre stands this deep in noise and tails says nothing, dB (our judgement). */
const mostError = 6;
/** Fewest strokes of each hand among like ones (our judgement). */
const fewestAlike = 3;
/** Sounds are believed up to so many spreads from the middle. Our judgement. */
const mostSpreads = 4;

/**
 * Strokes of both hands in equal circumstances, freed from what else makes strokes sound different: accent and place
 * (means of like strokes) and how hard it was struck (slope on level). Null where no circumstances have both hands.
 */
export const handContrasts = (strokes: readonly HandStroke[]): HandContrasts | null => {
  const heard = strokes.filter(
    ({ hand, timbre }) => hand !== null && timbre !== null && !timbre.cut && timbreError(timbre) <= mostError,
  );
  const counts = new Map<string, Record<Hand, number>>();
  for (const { like, hand } of heard) {
    const count = counts.get(like) ?? { R: 0, L: 0 };
    count[hand!]++;
    counts.set(like, count);
  }
  const usable = new Set(
    [...counts].flatMap(([like, { R, L }]) => (Math.min(R, L) >= fewestAlike ? [like] : [])),
  );
  const used = heard.filter(({ like }) => usable.has(like));
  if (used.length === 0) return null;
  const rowsOf = new Map<string, number[]>();
  used.forEach(({ like }, i) => {
    if (!rowsOf.has(like)) rowsOf.set(like, []);
    rowsOf.get(like)!.push(i);
  });
  const centred = (values: Float64Array): Float64Array => {
    for (const rows of rowsOf.values()) {
      const middle = mean(rows.map((i) => values[i]!));
      for (const i of rows) values[i]! -= middle;
    }
    return values;
  };
  const level = centred(Float64Array.from(used, ({ levelDb }) => levelDb));
  const levelSquares = level.reduce((sum, x) => sum + x * x, 0);
  const freed = (values: Float64Array): Float64Array => {
    centred(values);
    const slope = levelSquares > 0 ? values.reduce((sum, x, i) => sum + x * level[i]!, 0) / levelSquares : 0;
    return values.map((x, i) => x - slope * level[i]!);
  };
  // The values of attack and body add up to nothing, so one of them says nothing new.
  const all = used[0]!.timbre!.values.length;
  const kept = Array.from({ length: all }, (_, f) => f).filter((f) => f !== all - 3);
  const columns = kept.map((f) => {
    const values = freed(Float64Array.from(used, ({ timbre }) => timbre!.values[f]!));
    const centre = median(values);
    const most = mostSpreads * madToSd * mad(values);
    return values.map((x) => Math.max(centre - most, Math.min(centre + most, x)));
  });
  return {
    segment: used.map(({ segment }) => segment),
    hand: freed(Float64Array.from(used, ({ hand }) => (hand === 'R' ? 0.5 : -0.5))),
    // Lists of numbers: so short an array of floats takes three times the room.
    sound: used.map((_, i) => columns.map((column) => column[i]!)),
    figures: kept.length,
    freedom: used.length - rowsOf.size - 1,
  };
};

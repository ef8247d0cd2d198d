import type { Outcome } from '../result/take-result.ts';
import { median } from '../stats/median.ts';
import { outliers } from '../stats/outliers.ts';
import { notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { spreadOutcome } from './spread-outcome.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Where the spreads of level come from. */
export const levelSpreadSource =
  'Standard deviation within each hand and partial, chi-square interval; a step of about 1 dB is just audible (quoted from memory).';

/** Degrees of freedom below which a spread isn't told (our judgement). */
const fewestDegrees = 5;
/** Chi-square degrees against independent normal levels; found in simulations with heavy tails and slow fading. */
const degreesKept = 0.8;
/** A level nearer than this to its kind's median is never a slip, dB (our judgement). */
const leastSlipDb = 0.2;

/**
 * Standard deviation of levels within each kind, a kind being one partial played by one hand, so that neither a louder
 * hand nor an accent's place widens it. Outliers are slips, not spread: they are left out and pointed at.
 */
export function levelSpread(strokes: readonly PlayedStroke[]): Outcome {
  const kinds = new Map<string, PlayedStroke[]>();
  for (const stroke of strokes) {
    const { divisions, partial } = stroke.slot;
    const kind = `${divisions} ${partial} ${stroke.hand ?? '?'}`;
    const group = kinds.get(kind);
    if (group) group.push(stroke);
    else kinds.set(kind, [stroke]);
  }
  const groups = [...kinds.values()].filter((group) => group.length > 1);
  const compared = groups.flat();
  const needed = fewestDegrees + Math.max(1, groups.length);
  if (compared.length < needed) {
    return notMeasurable('too-few-strokes', { strokes: strokes.length, needed });
  }
  const distance = new Map<PlayedStroke, number>();
  for (const group of groups) {
    const centre = median(group.map((s) => s.levelDb));
    for (const stroke of group) distance.set(stroke, Math.abs(stroke.levelDb - centre));
  }
  const marks = outliers(
    compared.map((s) => s.levelDb),
    groups.flatMap((group, kind) => group.map(() => kind)),
  );
  const slips = new Set(compared.filter((s, i) => marks[i] === 1 && distance.get(s)! > leastSlipDb));
  let squares = 0;
  let errors = 0;
  let kept = 0;
  let kindsKept = 0;
  for (const group of groups) {
    const inside = group.filter((stroke) => !slips.has(stroke));
    if (inside.length < 2) continue;
    const mean = inside.reduce((sum, s) => sum + s.levelDb, 0) / inside.length;
    squares += inside.reduce((sum, s) => sum + (s.levelDb - mean) ** 2, 0);
    errors += inside.reduce((sum, s) => sum + s.levelSe ** 2, 0);
    kept += inside.length;
    kindsKept++;
  }
  const free = kept - kindsKept;
  if (free < fewestDegrees) return notMeasurable('too-few-strokes', { strokes: strokes.length, needed });
  const variance = squares / free;
  return spreadOutcome({
    variance,
    errorVariance: errors / kept,
    degrees: degreesKept * free,
    perUnit: 1,
    unit: 'dB',
    strokes: kept,
    pointsAt: worstStrokes(strokes, (stroke) => (distance.get(stroke) ?? 0) - 1.5 * Math.sqrt(variance)),
  });
}

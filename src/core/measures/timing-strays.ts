import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** Fewest strokes for a timing model, or for a part to have a scatter of its own (our judgement: eight triplets). */
export const fewestTimed = 24;
/** A stroke this many robust standard deviations off is a stray; our judgement, kept in simulations. */
export const strayAt = 3.5;
/** Scatter below which nobody is told of strays, s (our judgement: under what an onset can be found to). */
const leastScatter = 0.0002;
/** Strokes on either side within which only the furthest is taken for a stray, since it bends its neighbours' fits. */
const strayNeighbours = 3;

/**
 * The parts of a take that a stroke belongs to. One of them may be far looser than the rest, and its strokes are its
 * scatter, not strays.
 */
const partsOf: readonly ((stroke: PlayedStroke) => string | number | null)[] = [
  () => 0,
  ({ slot }) => slot.line,
  ({ slot }) => `${slot.line} ${slot.repeat}`,
  ({ hand }) => hand,
  ({ slot }) => slot.partial,
];

/** How far off each stroke may be: by the usual scatter of the loosest part it belongs to. */
function strayLimits(
  sizes: Float64Array,
  judged: Uint8Array,
  strokes: readonly PlayedStroke[],
): Float64Array {
  const limits = new Float64Array(sizes.length);
  for (const partOf of partsOf) {
    const parts = new Map<string | number, number[]>();
    strokes.forEach((stroke, i) => {
      const part = partOf(stroke);
      if (judged[i] === 0 || part === null) return;
      const members = parts.get(part);
      if (members) members.push(i);
      else parts.set(part, [i]);
    });
    for (const members of parts.values()) {
      if (members.length < fewestTimed) continue;
      const usual = madToSd * median(members.map((i) => sizes[i]!));
      for (const i of members) limits[i] = Math.max(limits[i]!, strayAt * Math.max(leastScatter, usual));
    }
  }
  return limits;
}

/**
 * Indices of strokes too far off to belong to the player's habits and scatter. `scaled` holds residuals brought to the
 * variance of the stroke's own scatter, s; strokes that aren't `judged` are none.
 */
export function findStrays(
  { scaled, judged }: { readonly scaled: Float64Array; readonly judged: Uint8Array },
  strokes: readonly PlayedStroke[],
): number[] {
  const sizes = scaled.map((value, i) => (judged[i] === 1 ? Math.abs(value) : 0));
  const limits = strayLimits(sizes, judged, strokes);
  return [...sizes.keys()].filter((i) => {
    if (sizes[i]! <= limits[i]!) return false;
    for (let j = i - strayNeighbours; j <= i + strayNeighbours; j++)
      if ((sizes[j] ?? 0) > sizes[i]!) return false;
    return true;
  });
}

import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import type { SimulatedTake } from './simulated-take.ts';

/** How an alignment compares with the truth of a simulated take. */
export interface Judgement {
  readonly right: number;
  readonly found: number;
  readonly wanted: number;
  /** Strokes of abandoned or surplus parts that were graded. */
  readonly wronglyGraded: number;
  /** Whether graded runs begin at the strokes at which they truly begin, one stroke's leeway. */
  readonly segmentsRight: boolean;
}

export const judge = (take: SimulatedTake, alignment: Alignment): Judgement => {
  const graded = (segment: number): boolean => alignment.segments[segment]!.state === 'graded';
  /**
   * Where a partial was dropped or put in among strokes of equal level, no level says which one it was:
   * strokes within one beat of a slip are left out of the count.
   */
  const slips = take.parts.flatMap((part, p) =>
    part.after === 'left-out' || part.after === 'put-in'
      ? [take.truth.findIndex((truth) => truth?.part === p)]
      : [],
  );
  const besideSlip = (stroke: number): boolean => slips.some((slip) => Math.abs(slip - stroke) <= 3);
  let right = 0;
  let found = 0;
  let wronglyGraded = 0;
  for (const { slot, stroke, segment } of alignment.matches) {
    if (!graded(segment)) continue;
    found++;
    const truth = take.truth[stroke];
    if (besideSlip(stroke)) {
      found--;
      continue;
    }
    if (truth && take.parts[truth.part]!.state !== 'graded') wronglyGraded++;
    else if (truth?.slot === slot) right++;
  }
  const wanted = take.truth.filter(
    (truth, stroke) => truth && !besideSlip(stroke) && take.parts[truth.part]!.state === 'graded',
  ).length;
  const trueBreaks: number[] = [];
  let last = -1;
  take.truth.forEach((truth, stroke) => {
    if (!truth || truth.part === last) return;
    last = truth.part;
    trueBreaks.push(stroke);
  });
  const breaks = alignment.segments.flatMap((_, segment) => {
    const first = alignment.matches.find((match) => match.segment === segment);
    return first && graded(segment) ? [first.stroke] : [];
  });
  const near = (list: readonly number[], stroke: number): boolean =>
    list.some((other) => Math.abs(other - stroke) <= 3);
  const trueGraded = trueBreaks.filter((stroke) => take.parts[take.truth[stroke]!.part]!.state === 'graded');
  const tempoBreaks = (stroke: number): boolean => {
    const slot = take.truth[stroke];
    return (
      slot !== null &&
      slot !== undefined &&
      take.slots[slot.slot]!.line > 0 &&
      take.slots[slot.slot]!.position < 1
    );
  };
  const segmentsRight =
    trueGraded.every((stroke) => near(breaks, stroke)) &&
    breaks.every((stroke) => near(trueBreaks, stroke) || tempoBreaks(stroke));
  return { right, found, wanted, wronglyGraded, segmentsRight };
};

export const slotF = ({ right, found, wanted }: Pick<Judgement, 'right' | 'found' | 'wanted'>): number =>
  found + wanted === 0 ? 1 : (2 * right) / (found + wanted);

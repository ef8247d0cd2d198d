import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import type { SimulatedTake } from './simulated-take.ts';

/** How an alignment compares with the truth of a simulated take. */
export interface Judgement {
  readonly right: number;
  readonly found: number;
  readonly wanted: number;
  /** Strokes of abandoned or surplus parts that were graded. */
  readonly wronglyGraded: number;
  /** Whether graded runs begin at the strokes at which they truly begin, one stroke's leeway, a slip anywhere between its accents. */
  readonly segmentsRight: boolean;
}

export const judge = (take: SimulatedTake, alignment: Alignment): Judgement => {
  const graded = (segment: number): boolean => alignment.segments[segment]!.state === 'graded';
  /**
   * Where a partial was dropped or put in among strokes of equal level, no level says which one it was: strokes
   * from the last accent before a slip up to the first after it are left out of the count.
   */
  const isAccent = (stroke: number): boolean => take.slots[take.truth[stroke]?.slot ?? -1]?.accent === true;
  const unsure = new Set<number>();
  take.parts.forEach((part, p) => {
    if (part.after !== 'left-out' && part.after !== 'put-in') return;
    const slip = take.truth.findIndex((truth) => truth?.part === p);
    for (let j = slip; j < take.truth.length; j++) {
      unsure.add(j);
      if (isAccent(j)) break;
    }
    for (let j = slip - 1; j >= 0; j--) {
      unsure.add(j);
      if (isAccent(j)) break;
    }
  });
  let right = 0;
  let found = 0;
  let wronglyGraded = 0;
  for (const { slot, stroke, segment } of alignment.matches) {
    if (!graded(segment)) continue;
    if (unsure.has(stroke)) continue;
    found++;
    const truth = take.truth[stroke];
    if (truth && take.parts[truth.part]!.state !== 'graded') wronglyGraded++;
    else if (truth?.slot === slot) right++;
  }
  const wanted = take.truth.filter(
    (truth, stroke) => truth && !unsure.has(stroke) && take.parts[truth.part]!.state === 'graded',
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
    list.some((other) => Math.abs(other - stroke) <= 1 || (unsure.has(other) && unsure.has(stroke)));
  const trueGraded = trueBreaks.filter((stroke) => take.parts[take.truth[stroke]!.part]!.state === 'graded');
  /** A new line may begin a new run: its tempo may differ, its rest may not have been kept. */
  const startsLine = (stroke: number): boolean => {
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
    breaks.every((stroke) => near(trueBreaks, stroke) || startsLine(stroke));
  return { right, found, wanted, wronglyGraded, segmentsRight };
};

export const slotF = ({ right, found, wanted }: Pick<Judgement, 'right' | 'found' | 'wanted'>): number =>
  found + wanted === 0 ? 1 : (2 * right) / (found + wanted);

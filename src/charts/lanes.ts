import type { GradedStroke } from './graded-strokes.ts';

/** A stroke whose deviation is known. */
type TimedStroke = GradedStroke & { readonly deviationMs: number };

/** Strokes that share a place in the beat and, where asked for, a hand. */
export interface Lane {
  readonly label: string;
  readonly strokes: readonly TimedStroke[];
}

const handName = { R: 'right', L: 'left' } as const;

/**
 * Sorts the timed strokes by place in the beat, in the order of the beat: one lane a partial, or one a partial and
 * hand with `byHand`. Where a take divides its beats in different ways each division has its own lanes.
 *
 * @example lanes(gradedStrokes(result), { byHand: false }).map((lane) => lane.label) // ['1', '2', '3']
 */
export function lanes(strokes: readonly GradedStroke[], { byHand }: { readonly byHand: boolean }): Lane[] {
  const timed = strokes.filter((stroke): stroke is TimedStroke => stroke.deviationMs !== null);
  const mixed = new Set(timed.map((stroke) => stroke.divisions)).size > 1;
  const found = new Map<string, { order: number; label: string; strokes: TimedStroke[] }>();
  for (const stroke of timed) {
    const hand = byHand && stroke.hand !== null ? ` ${handName[stroke.hand]}` : '';
    const label = `${stroke.partial}${mixed ? ` of ${stroke.divisions}` : ''}${hand}`;
    const order = stroke.divisions * 1000 + stroke.partial * 2 + (stroke.hand === 'L' && byHand ? 1 : 0);
    const lane = found.get(label) ?? { order, label, strokes: [] };
    lane.strokes.push(stroke);
    found.set(label, lane);
  }
  return [...found.values()]
    .sort((a, b) => a.order - b.order)
    .map(({ label, strokes: s }) => ({ label, strokes: s }));
}

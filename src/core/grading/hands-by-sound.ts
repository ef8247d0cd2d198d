import { type HandEvidence, handEvidence } from '../alignment/hand-evidence.ts';
import type { Performance } from '../measures/performance.ts';
import type { Stroke } from '../onsets/stroke.ts';

/** What the sound of a take's graded strokes says of their written hands. */
export function handsBySound(performance: Performance, strokes: readonly Stroke[]): HandEvidence {
  const segmentOf = new Map(performance.alignment.matches.map(({ stroke, segment }) => [stroke, segment]));
  return handEvidence(
    performance.strokes.map(({ stroke, slot, hand, place, handChange, levelDb }) => ({
      hand,
      like: [slot.line, slot.accent, place, slot.divisions, slot.partial, slot.buzz, handChange].join(' '),
      segment: segmentOf.get(stroke)!,
      levelDb,
      timbre: strokes[stroke]!.timbre,
    })),
  );
}

/** A performance with what the sound says put in: segments led by the other hand, hands that can't be trusted. */
export function withHeardHands(
  performance: Performance,
  { says, swapped }: HandEvidence,
  again: (alignment: Performance['alignment']) => Performance,
): Performance {
  if (says === 'contradicted') return { ...performance, hands: 'not-told' };
  if (swapped.size === 0) return performance;
  const segments = performance.alignment.segments.map((segment, i) =>
    swapped.has(i) ? { ...segment, leadSwapped: true } : segment,
  );
  return again({ ...performance.alignment, segments });
}

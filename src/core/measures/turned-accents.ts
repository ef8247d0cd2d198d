import { defineMeasure } from './measure.ts';
import { shareOfStrokes } from './share-of-heard-accents.ts';

/** How much of the take has its accents on other partials than written. */
export const turnedAccents = defineMeasure(
  {
    id: 'turned-accents',
    title: 'Accents turned round',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes:
      'Share of the take in which the accents, as a whole, lie on another partial than written; it points at the stroke where they turn.',
    source:
      'Most likely course of the pattern’s shifts (Viterbi 1967) at 10 nats a change, our judgement; Wilson 1927 with a design effect.',
  },
  ({ accents: found, strokes }) => {
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { turns, turned } = found.accents;
    const here = new Set(strokes.map(({ stroke }) => stroke));
    const opening = turns.map(({ opensAt }) => opensAt).filter((stroke) => here.has(stroke));
    const outcome = shareOfStrokes(strokes, ({ stroke }) => turned.has(stroke), opening);
    return [{ scope: {}, outcome }];
  },
);

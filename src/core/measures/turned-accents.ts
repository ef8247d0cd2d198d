import { defineMeasure } from './measure.ts';
import { shareOfStrokes } from './share-of-heard-accents.ts';
import { shareInterval } from './share-outcome.ts';

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
    formula:
      '100 · strokes inside turned runs / strokes; run: where another place of the whole pattern fits the levels better by 10 nats',
    interval: shareInterval,
    reading:
      'Zero: the accents kept their partial. Above: from the stroke it points at the pattern sat elsewhere. Play the line with a bell on the first beat of the bar.',
    limits: [
      "A pattern that looks the same when shifted can't turn.",
      'Takes about three clear beats to be believed.',
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-strokes', 'accents-not-told-from-taps'],
    source:
      "Most likely course of the pattern's shifts (Viterbi 1967) at 10 nats a change, our judgement; Wilson 1927 with a design effect.",
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

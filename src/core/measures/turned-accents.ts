import { defineMeasure } from './measure.ts';
import { shareOfHeardAccents } from './share-of-heard-accents.ts';

/** How much of the take has its accents on other partials than written. */
export const turnedAccents = defineMeasure(
  {
    id: 'turned-accents',
    title: 'Accents turned round',
    unit: '%',
    better: 'low',
    describes:
      'Share of the take in which the accents, as a whole, lie on another partial than written; it points at the stroke where they turn.',
    source:
      'Most likely course of the pattern’s shifts (Viterbi 1967) at 10 nats a change, our judgement; Wilson 1927 with a design effect.',
  },
  (performance) => [
    {
      scope: {},
      outcome: shareOfHeardAccents(performance, {
        of: () => true,
        hit: (_, i, { turned }) => turned[i] === 1,
        pointAt: (_, i, { turns }) => turns.some((turn) => turn.from === i),
      }),
    },
  ],
);

import type { Criterion, Rubric } from '../rubric.ts';

const ours = 'our judgement, until teachers have marked takes';

const toZero = (
  measure: string,
  weight: number,
  secure: number,
  nearly: number,
  source: string,
): Criterion => ({
  measure,
  weight,
  perfect: 0,
  secure,
  nearly,
  source,
});

/** For players whose hands know the strokes and who work on evenness. The other rubrics are made from this one. */
export const steady: Rubric = {
  id: 'steady',
  title: 'Steady',
  dimensions: [
    {
      id: 'evenness',
      weight: 1,
      criteria: [
        toZero(
          'timing-spread-share',
          1,
          5,
          10,
          `${ours}; for size: a displacement of 2.5 % of the interval, 6 ms below 240 ms, is just audible (Friberg & Sundberg 1995)`,
        ),
      ],
    },
    {
      id: 'shape',
      weight: 1,
      criteria: [toZero('placement-share', 1, 3, 7, ours), toZero('accent-bend-share', 1, 3, 7, ours)],
    },
    {
      id: 'dynamics',
      weight: 1,
      criteria: [
        {
          measure: 'accent-to-tap-ratio',
          weight: 2,
          perfect: { min: 8, max: 20 },
          secure: 1,
          nearly: 3,
          source: ours,
        },
        { measure: 'separation', weight: 1, perfect: 1, secure: 0.01, nearly: 0.05, source: ours },
        toZero('tap-spread', 1, 1.5, 3, `${ours}; a step of about 1 dB is just audible (quoted from memory)`),
        toZero(
          'accent-spread',
          1,
          1.5,
          3,
          `${ours}; a step of about 1 dB is just audible (quoted from memory)`,
        ),
      ],
    },
    {
      id: 'hands',
      weight: 1,
      criteria: [
        toZero(
          'hand-offset-share',
          1,
          2,
          5,
          `${ours}; for size: professional drummers' hands lie within about 10 ms (Fujii et al. 2011)`,
        ),
        toZero('hand-ratio-gap', 1, 1.5, 4, ours),
      ],
    },
    {
      id: 'steadiness',
      weight: 1,
      criteria: [toZero('tempo-change', 1, 1, 3, ours), toZero('tempo-error', 1, 1, 3, ours)],
    },
    { id: 'completeness', weight: 1, criteria: [toZero('missed-and-extra', 1, 0.5, 3, ours)] },
  ],
};

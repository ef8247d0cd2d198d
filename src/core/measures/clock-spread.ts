import { clockAndMotor } from './clock-and-motor.ts';
import { defineMeasure } from './measure.ts';

/** How much the interval kept in mind varies, without a click. */
export const clockSpread = defineMeasure(
  {
    id: 'clock-spread',
    title: 'Scatter of inner beat',
    unit: 'ms',
    better: 'low',
    describes:
      'Without a click: how much the interval that one keeps in mind varies from stroke to stroke. A click heard in headphones makes it meaningless.',
    formula:
      'sqrt( g0 + 2 g1 ); g0: variance of the intervals less habits; g1: covariance of an interval with the next',
    interval: 'Chi-square, with degrees of freedom from the large-sample variance of g0 + 2 g1.',
    reading:
      'Low: the interval kept in mind is steady. Practise subdividing in mind, without a click. Compare it only with takes at the same tempo.',
    limits: [
      "Only without a click; a click in headphones, which isn't heard, spoils it.",
      'Needs 100 intervals in a row.',
      "It is a model: what doesn't fit it gets no figure.",
    ],
    reasons: [
      'too-few-strokes',
      'too-broken-up',
      'played-to-a-click',
      'several-tempos',
      'too-few-intervals',
      'clock-and-motor-do-not-split',
    ],
    source: 'Wing & Kristofferson 1973; at least 100 intervals.',
  },
  (performance) => [{ scope: {}, outcome: clockAndMotor(performance).clock }],
);

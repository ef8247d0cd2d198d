import { clockAndMotor } from './clock-and-motor.ts';
import { defineMeasure } from './measure.ts';

/** How much the movement adds to the scatter, without a click. */
export const motorSpread = defineMeasure(
  {
    id: 'motor-spread',
    title: 'Scatter of the movement',
    unit: 'ms',
    better: 'low',
    describes:
      'Without a click: how far single strokes miss the moment meant for them, which the next interval makes up for. A click heard in headphones makes it meaningless.',
    formula:
      'sqrt( −g1 − e² ); g1: covariance of an interval with the next, habits taken out; e: error of finding a stroke',
    interval: 'Chi-square, with degrees of freedom from the large-sample variance of g1.',
    reading:
      "Low: strokes land when they are meant to. High beside a low inner beat: the idea is steady, the landing isn't; slow and relaxed repetition serves better than more clicks.",
    limits: [
      "Only without a click; a click in headphones, which isn't heard, spoils it.",
      'Needs 100 intervals in a row.',
      'It says nothing of how the stick moves.',
    ],
    reasons: [
      'too-few-strokes',
      'too-broken-up',
      'played-to-a-click',
      'several-tempos',
      'too-few-intervals',
      'clock-and-motor-do-not-split',
      'found-too-coarsely',
    ],
    source: 'Wing & Kristofferson 1973; at least 100 intervals, the error of finding strokes taken out.',
  },
  (performance) => [{ scope: {}, outcome: clockAndMotor(performance).motor }],
);

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
    source: 'Wing & Kristofferson 1973; at least 100 intervals, the error of finding strokes taken out.',
  },
  (performance) => [{ scope: {}, outcome: clockAndMotor(performance).motor }],
);

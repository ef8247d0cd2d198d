import { clockAndMotor } from './clock-and-motor.ts';
import { defineMeasure } from './measure.ts';

/** How much the interval kept in mind varies, without a click. */
export const clockSpread = defineMeasure(
  {
    id: 'clock-spread',
    title: 'Scatter of the inner beat',
    unit: 'ms',
    better: 'low',
    describes:
      'Without a click: how much the interval that one keeps in mind varies from stroke to stroke. A click heard in headphones makes it meaningless.',
    source: 'Wing & Kristofferson 1973; at least 100 intervals.',
  },
  (performance) => [{ scope: {}, outcome: clockAndMotor(performance).clock }],
);

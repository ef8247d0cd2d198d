import { defineMeasure, type Measure } from './measure.ts';
import { scaled } from './outcomes.ts';
import { partialLength } from './timing-or-reason.ts';

/** The same measure as a share of the length of one partial, %, under its id with `-share` behind it. */
export function shareOfPartial(measure: Measure): Measure {
  const description = {
    id: `${measure.id}-share`,
    title: `${measure.title}, share of a partial`,
    unit: '%' as const,
    better: measure.better,
    describes: `${measure.describes} As a share of the time from one partial to the next.`,
    formula: `100 · f / t; f: the figure in ms, t: mean time from one partial to the next; f = ${measure.formula}`,
    interval: `${measure.interval} Bounds are divided by t too.`,
    reading: measure.reading,
    limits: [
      ...measure.limits,
      "A figure at one tempo and at another aren't the same skill: compare like tempos.",
    ],
    reasons: measure.reasons,
    source: measure.source,
  };
  return defineMeasure(description, (performance) => {
    const perMs = performance.timing ? 0.1 / partialLength(performance, performance.timing) : 1;
    return measure
      .compute(performance)
      .map(({ scope, outcome }) => ({ scope, outcome: scaled(outcome, perMs) }));
  });
}

import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { type FigureLane, laneChart, laneTable, middleOf } from './lane-chart.ts';
import { listWords } from './list-words.ts';
import { stepScale } from './step-scale.ts';
import { type Step, stepsBetween, stepWords } from './steps-between.ts';

/** Steps below which a lane says nothing of the beat's shape. Our judgement. */
const fewestSteps = 4;

/** Steps by the partials they lead from and to, in the order of the beat. */
function figureLanes(result: TakeResult): FigureLane[] {
  const steps = stepsBetween(result).filter(({ from, to }) => from.divisions === to.divisions);
  const mixed = new Set(steps.map(({ to }) => to.divisions)).size > 1;
  const found = new Map<string, { order: number; label: string; steps: Step[] }>();
  for (const step of steps) {
    const { partial, divisions } = step.from;
    const label = `${partial} to ${step.to.partial}${mixed ? ` of ${divisions}` : ''}`;
    const lane = found.get(label) ?? { order: divisions * 1000 + partial, label, steps: [] };
    lane.steps.push(step);
    found.set(label, lane);
  }
  return [...found.values()]
    .filter((lane) => lane.steps.length >= fewestSteps)
    .sort((a, b) => a.order - b.order)
    .map((lane) => ({
      label: lane.label,
      items: lane.steps.map(({ to, beyondEvenMs }) => ({ stroke: to, value: beyondEvenMs })),
    }));
}

/** How much longer or shorter than even each step inside the beat is, ms, one lane a pair of partials. */
export const beatShape: ChartEntry = {
  id: 'beat-shape',
  question: 'Are the steps inside the beat equally long?',
  needs: `at least ${fewestSteps} steps between the same two partials`,
  draw: (result, look) => {
    const found = figureLanes(result);
    return laneChart(result, look, found, {
      question: beatShape.question,
      across: 'from partial to partial; each lane runs from start to end',
      up: stepScale(look),
    }) as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const parts = figureLanes(result).map((lane) => `${lane.label}: ${stepWords(middleOf(lane))}`);
    return `Steps from partial to partial against the even step. In the middle, ${listWords(parts)}.`;
  },
  table: (result) => laneTable(figureLanes(result), ['Step', 'Shortest', 'Longest'], stepWords),
};

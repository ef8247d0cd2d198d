import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { type FigureLane, laneChart, laneTable, middleOf } from './lane-chart.ts';
import { listWords } from './list-words.ts';
import { stepScale } from './step-scale.ts';
import { type Step, stepsBetween, stepWords } from './steps-between.ts';

/** Steps below which a kind says nothing. Our judgement. */
const fewestSteps = 4;

const byAccent: readonly [string, (step: Step) => boolean][] = [
  ['tap to accent', ({ from, to }) => !from.accent && to.accent],
  ['accent to tap', ({ from, to }) => from.accent && !to.accent],
  ['tap to tap', ({ from, to }) => !from.accent && !to.accent],
  ['accent to accent', ({ from, to }) => from.accent && to.accent],
];
const byHand: readonly [string, (step: Step) => boolean][] = [
  ['hands change', ({ from, to }) => from.hand !== null && to.hand !== null && from.hand !== to.hand],
  ['same hand', ({ from, to }) => from.hand !== null && from.hand === to.hand],
];

/** Steps by what happens in them; kinds are shown only beside another one to hold them against. */
function figureLanes(result: TakeResult): FigureLane[] {
  const steps = stepsBetween(result);
  return [byAccent, byHand].flatMap((kinds) => {
    const lanes = kinds
      .map(([label, belongs]) => ({
        label,
        items: steps.filter(belongs).map(({ to, beyondEvenMs }) => ({ stroke: to, value: beyondEvenMs })),
      }))
      .filter((lane) => lane.items.length >= fewestSteps);
    return lanes.length < 2 ? [] : lanes;
  });
}

/** How much longer or shorter than even the steps into, out of and away from accents are, and where hands change. */
export const transitions: ChartEntry = {
  id: 'transitions',
  question: 'Does an accent or a change of hands stretch the step?',
  needs: "accents beside taps, or hands that sometimes change and sometimes don't",
  draw: (result, look) => {
    const found = figureLanes(result);
    return laneChart(result, look, found, {
      question: transitions.question,
      across: 'kind of step; each lane runs from start to end',
      up: stepScale(look),
    }) as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const parts = figureLanes(result).map((lane) => `${lane.label}: ${stepWords(middleOf(lane))}`);
    return `Steps from stroke to stroke against the even step, by what happens in them. In the middle, ${listWords(parts)}.`;
  },
  table: (result) => laneTable(figureLanes(result), ['Step', 'Shortest', 'Longest'], stepWords),
};

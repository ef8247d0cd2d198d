import type { TakeResult } from '../core/result/take-result.ts';
import { type AccentPlace, accentPlaces } from './accent-places.ts';
import type { ChartEntry } from './chart-entry.ts';
import { type FigureLane, laneChart, laneTable, middleOf } from './lane-chart.ts';
import { levelScale } from './level-scale.ts';
import { listWords } from './list-words.ts';
import { decibels } from './stroke-words.ts';

/** Taps below which a place says nothing. Our judgement. */
const fewestTaps = 4;

const places: readonly [AccentPlace, string][] = [
  ['before', 'right before an accent'],
  ['after', 'right after an accent'],
  ['between', 'between two accents'],
  ['elsewhere', 'away from accents'],
];

/** Taps by where they stand to the accents; none where there is nothing to hold them against. */
function figureLanes(result: TakeResult): FigureLane[] {
  const placed = accentPlaces(result);
  const lanes = places
    .map(([place, label]) => ({
      label,
      items: placed
        .filter((one) => one.place === place)
        .map(({ stroke }) => ({ stroke, value: stroke.levelDb })),
    }))
    .filter((lane) => lane.items.length >= fewestTaps);
  return lanes.length < 2 ? [] : lanes;
}

/** Level of the taps, dB, by where they stand to an accent. */
export const tapNeighbours: ChartEntry = {
  id: 'tap-neighbours',
  question: 'Do the taps stay low beside an accent?',
  needs: `taps in two places, at least ${fewestTaps} in each: beside an accent and away from it, or before it and after it`,
  draw: (result, look) =>
    laneChart(result, look, figureLanes(result), {
      question: tapNeighbours.question,
      across: 'place of the tap; each lane runs from start to end',
      up: levelScale(look),
    }) as ReturnType<ChartEntry['draw']>,
  text: (result) => {
    const parts = figureLanes(result).map((lane) => `${lane.label} at ${decibels(middleOf(lane))}`);
    return `Level of the taps by where they stand to an accent. In the middle, ${listWords(parts)}.`;
  },
  table: (result) => laneTable(figureLanes(result), ['Taps', 'Softest', 'Loudest'], decibels),
};

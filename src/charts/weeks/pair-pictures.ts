import type { TakeResult } from '../../core/result/take-result.ts';
import { measuredOutcome } from '../../core/scoring/find-measure.ts';
import { type GradedStroke, gradedStrokes } from '../graded-strokes.ts';
import { spreadOf } from '../spread-of.ts';
import type { PairLanes, Ranged } from './pair-lanes.ts';

type Pair = readonly [first: TakeResult, second: TakeResult];
type Names = PairLanes['names'];

const middleHalf = 'the middle half of the strokes';

/** Two takes' middle and middle half of `value`, one lane for each label that `labelOf` gives. */
function lanesBy(
  pair: Pair,
  labels: readonly string[],
  labelOf: (stroke: GradedStroke) => string,
  value: (stroke: GradedStroke) => number | null,
): PairLanes['lanes'] {
  const strokes = pair.map(gradedStrokes);
  const ranged = (side: 0 | 1, label: string): Ranged | null => {
    const own = strokes[side]!.filter((stroke) => labelOf(stroke) === label).map(value);
    const spread = spreadOf(own.filter((one) => one !== null));
    if (spread === null) return null;
    const { middle, lowerQuarter, upperQuarter, count } = spread;
    return { mid: middle, low: lowerQuarter, high: upperQuarter, strokes: count };
  };
  return labels
    .map((label) => ({ label, first: ranged(0, label), second: ranged(1, label) }))
    .filter(({ first, second }) => first !== null || second !== null);
}

/** Where the strokes of two takes stand in the beat, by partial, accents and taps apart. */
export function placesPair(pair: Pair, names: Names): PairLanes {
  const partials = [...new Set(pair.flatMap((take) => take.slots.partial))].sort((a, b) => a - b);
  const labels = partials.flatMap((partial) => [`${partial}, accent`, `${partial}, tap`]);
  return {
    kind: 'pair-lanes',
    id: 'places-pair',
    question: 'Where in the beat do the strokes stand?',
    up: 'ms early (−) or late',
    unit: 'ms',
    across: 'partial of the beat',
    range: middleHalf,
    names,
    lanes: lanesBy(
      pair,
      labels,
      ({ partial, accent }) => `${partial}, ${accent ? 'accent' : 'tap'}`,
      ({ deviationMs }) => deviationMs,
    ),
  };
}

/** How loud accents and taps of each hand are in two takes; only for takes whose levels may be compared. */
export function levelsPair(pair: Pair, names: Names): PairLanes {
  const hands = { R: 'right', L: 'left' } as const;
  const label = ({ accent, hand }: GradedStroke) =>
    `${accent ? 'accents' : 'taps'}${hand === null ? '' : `, ${hands[hand]}`}`;
  const labels = ['accents, right', 'accents, left', 'accents', 'taps, right', 'taps, left', 'taps'];
  return {
    kind: 'pair-lanes',
    id: 'levels-pair',
    question: 'How loud are accents and taps?',
    up: 'level, dBFS',
    unit: 'dB',
    across: '',
    range: middleHalf,
    names,
    lanes: lanesBy(pair, labels, label, ({ levelDb }) => levelDb),
  };
}

/** Timing spread of each line in two takes of one sheet, with its 95 % interval. */
export function linesPair(pair: Pair, names: Names): PairLanes {
  const { lines } = pair[0].sheet;
  const ranged = ({ measures }: TakeResult, line: number): Ranged | null => {
    const own = measuredOutcome(measures, 'timing-spread', lines.length === 1 ? {} : { line });
    return own === undefined ? null : { mid: own.value, low: own.low, high: own.high, strokes: own.strokes };
  };
  return {
    kind: 'pair-lanes',
    id: 'lines-pair',
    question: 'How far do the strokes of each line scatter?',
    up: 'timing spread, ms: less is more even',
    unit: 'ms',
    across: '',
    range: 'the 95 % interval',
    names,
    lanes: lines
      .map((_, line) => ({
        label: `line ${line + 1}`,
        first: ranged(pair[0], line),
        second: ranged(pair[1], line),
      }))
      .filter(({ first, second }) => first !== null || second !== null),
  };
}

import { measures } from '../measures/index.ts';
import type { Better, Measure } from '../measures/measure.ts';
import { measureNames } from '../result/measure-names.ts';
import { sentence } from '../result/sentences.ts';
import type { Criterion, Rubric } from './rubric.ts';
import { rubrics } from './rubrics/index.ts';

/** The points of one rubric for a measure, in the measure's unit. */
export interface HandbookPoints {
  readonly rubric: string;
  readonly perfect: Criterion['perfect'];
  /** Distances from perfect. */
  readonly secure: number;
  readonly nearly: number;
  readonly source: string;
}

/** All that is said of one measure. */
export interface HandbookEntry {
  readonly id: string;
  readonly name: string;
  readonly unit: Measure['unit'];
  readonly better: Better;
  readonly exportOnly: boolean;
  readonly describes: string;
  readonly formula: string;
  readonly interval: string;
  readonly reading: string;
  readonly limits: readonly string[];
  /** Sentences that stand in place of a figure, each with figures of an example in it. */
  readonly refusals: readonly string[];
  readonly points: readonly HandbookPoints[];
  readonly source: string;
}

/** A figure that scores but is worked out from other measures. */
interface WorkedOutEntry {
  readonly id: string;
  readonly name: string;
  readonly describes: string;
  readonly points: readonly HandbookPoints[];
}

/** What stands in the sentences of an example: how many there were, and that more are needed. */
const example = {
  strokes: 5,
  silences: 2,
  msPerBeat: 4.2,
  accents: 5,
  taps: 5,
  intervals: 40,
  beats: 6,
  needed: 'more',
};
const exampleNeeds: Readonly<Record<string, number>> = {
  'too-few-silences': 3,
  'no-stroke-in-silence': 4,
  'too-few-intervals': 100,
  'no-run-long-enough': 12,
};

function refusal(code: string, { unit }: Measure): string {
  const needed = exampleNeeds[code] ?? example.needed;
  return sentence({ code, facts: { ...example, needed, spread: 3, error: 2, unit } });
}

const pointsIn = ({ id, dimensions }: Rubric, measure: string): HandbookPoints[] =>
  dimensions
    .flatMap(({ criteria }) => criteria)
    .filter((criterion) => criterion.measure === measure)
    .map(({ perfect, secure, nearly, source }) => ({ rubric: id, perfect, secure, nearly, source }));

const pointsOfMeasure = (id: string) => rubrics.flatMap((rubric) => pointsIn(rubric, id));

/**
 * Everything about every measure, in the order of the list: from the measures' own files, the rubrics' points and the
 * sentences of their reasons.
 *
 * @example measureHandbook()[0]?.id // 'timing-spread'
 */
export function measureHandbook(): HandbookEntry[] {
  return measures.map((measure) => {
    const { id, title, unit, better, describes, formula, interval, reading, limits, source } = measure;
    const refusals = measure.reasons.map((code) => refusal(code, measure));
    const exportOnly = measure.exportOnly === true;
    const told = { describes, formula, interval, reading, limits, refusals };
    return { id, name: title, unit, better, exportOnly, ...told, points: pointsOfMeasure(id), source };
  });
}

/** What the rubrics score besides the measures. */
export function workedOutFigures(): WorkedOutEntry[] {
  const scored = rubrics.flatMap(({ dimensions }) => dimensions.flatMap(({ criteria }) => criteria));
  const ids = [...new Set(scored.map(({ measure }) => measure))];
  return ids
    .filter((id) => measures.every((measure) => measure.id !== id))
    .map((id) => ({
      id,
      name: measureNames[id]!.name,
      describes: `${measureNames[id]!.says}.`.replace(/^./, (first) => first.toUpperCase()),
      points: pointsOfMeasure(id),
    }));
}

import type { MeasureResult, Outcome, Scope } from '../result/take-result.ts';
import type { Performance } from './performance.ts';
import type { PartKind } from './scopes.ts';

/** Where a measure's value is at its best. */
export type Better = 'near-zero' | 'low' | 'high' | 'within-band';

/** One thing that is measured about a take. */
export interface Measure {
  readonly id: string;
  /** Name shown to people. */
  readonly title: string;
  readonly unit: 'ms' | '%' | 'dB' | 'probability' | 'correlation';
  readonly better: Better;
  /** Parts of the take that it is measured for as well, besides each line. */
  readonly alsoBy?: readonly Exclude<PartKind, 'line'>[];
  /** For readers of papers: written to files, left out of reports, since no teacher acts on it. */
  readonly exportOnly?: true;
  /** What the figure says, in plain words. */
  readonly describes: string;
  /** How the figure comes about, in plain mathematics; its letters are told with it. */
  readonly formula: string;
  /** How its range is found. */
  readonly interval: string;
  /** What a player or teacher does with a high or a low figure. */
  readonly reading: string;
  /** What it can't tell, and where it is known to be weak. */
  readonly limits: readonly string[];
  /** Codes of every reason that it gives instead of a figure. */
  readonly reasons: readonly string[];
  /** Where the definition, its method and its interval come from. */
  readonly source: string;
  /** The whole take first, then its parts. */
  readonly compute: (performance: Performance) => MeasureResult[];
}

/** A measure's outcome for one part of the take. */
export interface Part {
  readonly scope: Scope;
  readonly outcome: Outcome;
}

/** Makes a measure of its description and a function that gives its outcome part by part. */
export function defineMeasure(
  description: Omit<Measure, 'compute'>,
  parts: (performance: Performance) => readonly Part[],
): Measure {
  const { id, unit } = description;
  return {
    ...description,
    compute: (performance) => parts(performance).map(({ scope, outcome }) => ({ id, unit, scope, outcome })),
  };
}

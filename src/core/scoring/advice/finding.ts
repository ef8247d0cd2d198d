import type { MeasureResult, Reason } from '../../result/take-result.ts';
import type { AskedLine } from '../criterion-targets.ts';
import type { Rubric } from '../rubric.ts';

/** What the rules of advice look at. */
export interface AdviceInput {
  readonly measures: readonly MeasureResult[];
  readonly lines: readonly AskedLine[];
  readonly rubric: Rubric;
}

/** Something to work on. */
export interface Finding extends Reason {
  /** Strokes to listen to, by index into the take's strokes. */
  readonly strokes: readonly number[];
  /** Points of the overall score's scale that go missing here: decides what is said first. */
  readonly lost: number;
}

/** One thing that a teacher might say, from figures whose intervals leave no doubt. */
export type AdviceRule = (input: AdviceInput) => readonly Finding[];

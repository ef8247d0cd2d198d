import type { MeasureResult, Reason, TakeResult } from '../../result/take-result.ts';
import type { AskedLine } from '../criterion-targets.ts';
import type { Rubric } from '../rubric.ts';

/** Where the accents as a whole come to lie on other partials than written; bar and beat count from 1. */
export interface TurnedAccents {
  readonly line: number;
  readonly repeat: number;
  readonly bar: number;
  readonly beat: number;
  /** Partials by which they come late; negative = early. */
  readonly by: number;
  /** Whether they lie off from the line's first beat on. */
  readonly fromStart: boolean;
  /** The accented partial of every beat, as written and as played; null where beats differ. */
  readonly writtenPartial: number | null;
  readonly playedPartial: number | null;
  /** Index into the take's strokes. */
  readonly stroke: number;
}

/** What the rules of advice look at. */
export interface AdviceInput {
  readonly measures: readonly MeasureResult[];
  /** With the tempo that is asked for, where it is known. */
  readonly lines: readonly (AskedLine & Partial<Pick<TakeResult['sheet']['lines'][number], 'bpm'>>)[];
  readonly rubric: Rubric;
  readonly turns?: readonly TurnedAccents[];
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

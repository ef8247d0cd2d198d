import type { Reason, TakeResult } from '../result/take-result.ts';
import { type LinePattern, linePattern } from './line-pattern.ts';

/** A take that others are held against: how its player places and weighs the strokes of each line. */
export interface PlayedModel {
  /** Name of its recording; untrusted text. */
  readonly name: string;
  readonly lines: readonly LinePattern[];
}

type ModelOrReason =
  | { readonly ok: true; readonly model: PlayedModel }
  | { readonly ok: false; readonly reason: Reason };

/** Spare strokes behind a scatter below which a line is no model (our judgement: three repeats of two triplets). */
export const fewestSpare = 12;

/**
 * The model in a graded take: for each written stroke of its lines the mean place in the beat and the mean level
 * against the median tap over the repeats, each with its scatter. Lines that were repeated too little are left out;
 * without a grade or a line there is a reason instead.
 *
 * @example modelFromTake(teachersTake) // { ok: true, model: { name: 'model.wav', lines: [{ notation: '>RLR >LRL', … }] } }
 */
export function modelFromTake(result: TakeResult): ModelOrReason {
  if (result.grading.state !== 'graded')
    return { ok: false, reason: { code: 'model-not-graded', facts: {} } };
  const lines = result.sheet.lines
    .map((_, line) => linePattern(result, line))
    .filter(({ placementScatter }) => placementScatter.degrees >= fewestSpare);
  if (lines.length === 0) return { ok: false, reason: { code: 'model-too-short', facts: {} } };
  return { ok: true, model: { name: result.recording.name, lines } };
}

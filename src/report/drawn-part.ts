import type { TakeResult } from '../core/result/take-result.ts';

/** The columns and parts that no picture reads are empty; everything else is as in the result. */
export type DrawnPart = TakeResult;

/**
 * The part of a result that its pictures read, for embedding in a report: half the size of the whole. Not a result
 * that could be kept: columns are missing.
 */
export function drawnPart(result: TakeResult): DrawnPart {
  return {
    ...result,
    recording: { ...result.recording, envelope: [] },
    strokes: { ...result.strokes, timeSe: [], levelSe: [] },
    slots: { ...result.slots, hand: [], buzz: [], position: [], state: [] },
    measures: [],
    advice: [],
    warnings: [],
    cannotTell: [],
  };
}

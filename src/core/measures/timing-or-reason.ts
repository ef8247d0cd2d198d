import type { Outcome } from '../result/take-result.ts';
import { notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { TimingModel } from './timing-model.ts';
import { fewestTimed } from './timing-strays.ts';

/** The take's timing model, or why there is none. */
export function timingOrReason({
  timing,
  strokes,
}: Performance): { readonly timing: TimingModel } | { readonly refusal: Outcome } {
  if (timing) return { timing };
  if (strokes.length < fewestTimed) {
    return { refusal: notMeasurable('too-few-strokes', { strokes: strokes.length, needed: fewestTimed }) };
  }
  return { refusal: notMeasurable('too-broken-up', { needed: fewestTimed }) };
}

/** Length of one partial on the average of the judged strokes, s. */
export function partialLength({ strokes }: Performance, timing: TimingModel): number {
  let sum = 0;
  strokes.forEach((stroke, i) => {
    if (timing.judged[i] === 1) sum += timing.period[i]! / stroke.slot.divisions;
  });
  return sum / timing.count;
}

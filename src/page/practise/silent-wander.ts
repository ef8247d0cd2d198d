import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';
import {
  type DueStroke,
  type SilentWander,
  wanderInSilence,
} from '../../core/click-track/wander-in-silence.ts';
import { layOut } from '../../core/exercise/lay-out.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';

/** How a take's beat wandered while the click was silent; null where it never was, or too little was played then. */
export function silentWander(
  { strokes }: TakeResult,
  sheet: Sheet,
  plan: ClickPlan,
  stretches: readonly SilentStretch[],
): SilentWander | null {
  if (stretches.length === 0) return null;
  const slots = layOut(sheet);
  const due = strokes.slot.flatMap((index, i): DueStroke[] => {
    const slot = index === null || strokes.role[i] !== 'matched' ? undefined : slots[index];
    if (slot === undefined || slot.time === null || slot.grace) return [];
    const beatSeconds = 60 / (sheet.lines[slot.line]!.bpm ?? 90);
    return [{ time: strokes.time[i]!, due: plan.firstBeat + slot.time, beatSeconds }];
  });
  return wanderInSilence(due, stretches);
}

const ms = (value: number) => `${value < 0 ? '−' : ''}${Math.abs(value).toFixed(1)}`;

/**
 * A wander in words.
 *
 * @example wanderInWords({ msPerBeat: 3.2, low: 1, high: 5.4, beats: 12 })
 * // 'Without the click, over 12 beats, each beat came 3.2 ms later (likely 1.0 to 5.4).'
 */
export function wanderInWords({ msPerBeat, low, high, beats }: SilentWander): string {
  const over = `Without the click, over ${beats} beats,`;
  if (low > 0) return `${over} each beat came ${ms(msPerBeat)} ms later (likely ${ms(low)} to ${ms(high)}).`;
  if (high < 0)
    return `${over} each beat came ${ms(-msPerBeat)} ms sooner (likely ${ms(-high)} to ${ms(-low)}).`;
  return `${over} no wandering can be told: ${ms(msPerBeat)} ms a beat, likely ${ms(low)} to ${ms(high)}.`;
}

import type { ClickPlan } from './click-plan.ts';

/** A stretch of a track in which the click doesn't sound, s from the track's start. */
export interface SilentStretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches that a plan leaves to the player: from the first click that doesn't sound to the next one that does.
 *
 * @example silentStretches(plan) // [{ from: 6, to: 8 }]
 */
export function silentStretches({ clicks, duration }: ClickPlan): SilentStretch[] {
  const stretches: SilentStretch[] = [];
  let from: number | null = null;
  for (const { time, audible } of clicks) {
    if (!audible) from ??= time;
    else if (from !== null) {
      stretches.push({ from, to: time });
      from = null;
    }
  }
  return from === null ? stretches : [...stretches, { from, to: duration }];
}

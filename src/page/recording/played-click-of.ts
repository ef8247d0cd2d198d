import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import type { DelayInUse } from './calibration/delay-in-use.ts';

/**
 * The beats of a click track as they reach the recording: silent ones too, since the beat goes on through them, but not
 * the parts of beats. `trackStart` is where the track's first sample lies on the recording's time, s, before any delay.
 *
 * @example playedClickOf(plan, 0.4, { latency: 0.05, se: 0.001 }).times[0] // 0.45
 */
export function playedClickOf(plan: ClickPlan, trackStart: number, delay: DelayInUse | null): PlayedClick {
  const beats = plan.clicks.filter(({ kind }) => kind !== 'subdivision');
  return {
    times: beats.map(({ time }) => trackStart + time + (delay?.latency ?? 0)),
    calibrated: delay !== null,
    uncertaintyMs: delay === null ? 0 : 1000 * delay.se,
  };
}

import type { ClickTimes } from '../../core/click/click-times.ts';
import type { ClickPlan, PlannedClick } from '../../core/click-track/click-plan.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';
import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import type { DelayInUse } from './calibration/delay-in-use.ts';

/** A beat within so much of a silence's edge lies on it, s. */
const edge = 1e-6;

/**
 * The beats of a click track as they reach the recording: silent ones too, since the beat goes on through them, but not
 * the parts of beats. `trackStart` is where the track's first sample lies on the recording's time, s, before any delay;
 * `silences` are stretches of the track (s) that were held back while it ran, besides those of the plan. `clock`: the rate
 * of the audio clock (Hz), on whose samples clicks begin, and when the track was stopped (s of it).
 *
 * @example playedClickOf(plan, 0.4, { latency: 0.05, se: 0.001 }).times[0] // 0.45
 */
export function playedClickOf(
  plan: ClickPlan,
  trackStart: number,
  delay: DelayInUse | null,
  silences: readonly SilentStretch[] = [],
  clock?: { readonly sampleRate: number; readonly until?: number },
): PlayedClick {
  const beats = plan.clicks.filter(({ kind }) => kind !== 'subdivision');
  const sounded = ({ time, audible }: PlannedClick) =>
    audible && !silences.some(({ from, to }) => time > from - edge && time < to - edge);
  const audible = beats.map(sounded);
  return {
    times: beats.map(({ time }) => trackStart + time + (delay?.latency ?? 0)),
    ...(audible.every(Boolean) ? {} : { audible }),
    ...(clock === undefined
      ? {}
      : {
          sounds: clickSounds(
            plan.clicks.filter((click) => sounded(click) && click.time < (clock.until ?? plan.duration)),
            (time) => trackStart + Math.round(time * clock.sampleRate) / clock.sampleRate,
          ),
          delay: delay?.latency ?? 0,
        }),
    calibrated: delay !== null,
    uncertaintyMs: delay === null ? 0 : 1000 * delay.se,
  };
}

/** Clicks by what they sound like. */
function clickSounds(clicks: readonly PlannedClick[], put: (time: number) => number): ClickTimes[] {
  const byKind = new Map<string, number[]>();
  for (const { kind, time } of clicks) byKind.set(kind, [...(byKind.get(kind) ?? []), put(time)]);
  return Array.from(byKind, ([kind, times]) => ({ kind, times }));
}

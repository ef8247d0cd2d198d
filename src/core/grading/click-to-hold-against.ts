import type { ClickTimes } from '../click/click-times.ts';
import type { HeardClick } from '../onsets/stroke.ts';
import type { Reason } from '../result/take-result.ts';
import { median } from '../stats/median.ts';

/** The click that was played to a take while it was recorded. */
export interface PlayedClick {
  /** Beats of the click on the recording's own time axis, s, the output's delay included; silent beats as well. */
  readonly times: readonly number[];
  /** For each of them whether it sounded; left out, all did. */
  readonly audible?: readonly boolean[];
  /**
   * What sounded of it, parts of beats too, by kind of sound and as it was put out, whatever its delay: what the microphone
   * heard of it is found by these times.
   */
  readonly sounds?: readonly ClickTimes[];
  /** How much later `times` are than they were put out, s; 0 unless said. */
  readonly delay?: number;
  /** Whether the delay of this output was measured. Without it nothing is said of ahead or behind. */
  readonly calibrated: boolean;
  /** Standard error of the delay, ms. */
  readonly uncertaintyMs: number;
}

/** Played and heard click further apart than this don't agree, s: sound's way over two metres, our judgement. */
const agree = 0.006;
/** Clicks heard within this of a played one are that one, s: a third of the shortest period of a heard click. */
const near = 0.08;

/** Median of heard less played, s, or null where too few of the heard clicks lie near a played one. */
function heardLater(heard: HeardClick, times: readonly number[]): number | null {
  const differences = heard.times.flatMap((time) => {
    const difference = times.reduce(
      (least, played) => (Math.abs(time - played) < Math.abs(least) ? time - played : least),
      Number.POSITIVE_INFINITY,
    );
    return Math.abs(difference) < near ? [difference] : [];
  });
  return differences.length >= 3 && 2 * differences.length >= heard.times.length ? median(differences) : null;
}

/** A click that was found by when it was put out: all its beats as they are heard, silent ones too. */
function beatsHeard(heard: HeardClick, { times, delay = 0 }: PlayedClick): HeardClick {
  const { put, levelDb } = heard;
  if (put === undefined) return heard;
  const beats = times.map((time) => put.delay + put.rate * (time - delay));
  const period = median(beats.slice(1).map((time, i) => time - beats[i]!));
  return { times: beats, period, levelDb, put, changes: true };
}

/**
 * The click that a take's strokes are held against. A played one with a measured delay goes first; where the same
 * click is heard in the recording at other times than the delay says, the delay isn't true any more, and what was heard
 * counts. Without a measured delay only a heard click counts: what is in the recording needs no delay.
 *
 * @example clickToHoldAgainst(null, { times: [1, 2, 3], calibrated: false, uncertaintyMs: 0 }).click // null
 */
export function clickToHoldAgainst(
  heard: HeardClick | null,
  played: PlayedClick | undefined,
): { readonly click: HeardClick | null; readonly warnings: readonly Reason[] } {
  if (played === undefined || played.times.length < 2) return { click: heard, warnings: [] };
  const { times, calibrated, uncertaintyMs } = played;
  const period = median(times.slice(1).map((time, i) => time - times[i]!));
  const beats = heard && beatsHeard(heard, played);
  if (!calibrated) {
    const warnings = heard === null ? [{ code: 'click-delay-unknown', facts: {} }] : [];
    return { click: beats, warnings };
  }
  const delaySe = uncertaintyMs / 1000;
  const later = beats === null ? null : heardLater(beats, times);
  if (beats !== null && later !== null && Math.abs(later) > Math.max(agree, 3 * delaySe)) {
    const facts = { differenceMs: 1000 * later };
    return { click: beats, warnings: [{ code: 'click-delay-changed', facts }] };
  }
  return {
    click: { times, period, levelDb: heard?.levelDb ?? -Infinity, played: { delaySe } },
    warnings: [],
  };
}

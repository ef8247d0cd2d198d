import { standardDeviation } from '../../../core/stats/standard-deviation.ts';
import type { KeptDelay } from './kept-delays.ts';

/** A delay to correct click times by, with what it may be off. */
export interface DelayInUse {
  /** s. */
  readonly latency: number;
  /** Standard error, s. */
  readonly se: number;
}

/**
 * Browsers put together the way from microphone to page anew each time it is opened, and it may come out longer or
 * shorter by a block of some milliseconds; so a delay of another opening is worth that much less, s. Our judgement;
 * with three or more measurements their own scatter is taken instead.
 */
const betweenOpenings = 0.004;
const enoughToTell = 3;

/**
 * The delay to use now: the latest measurement. In the opening of the microphone in which it was measured its own
 * standard error holds; in another, the scatter between openings comes on top.
 *
 * @example delayInUse([], 'now') // null
 */
export function delayInUse(delays: readonly KeptDelay[], session: string): DelayInUse | null {
  const latest = delays.at(-1);
  if (latest === undefined) return null;
  const { latency, se } = latest;
  if (latest.session === session) return { latency, se };
  const bySession = new Map(delays.map((delay) => [delay.session, delay.latency]));
  const between =
    bySession.size >= enoughToTell ? standardDeviation([...bySession.values()]) : betweenOpenings;
  return { latency, se: Math.hypot(se, between) };
}

import type { ClickTimes } from '../click/click-times.ts';
import { extent } from '../stats/extent.ts';
import type { PlayedClick } from './click-to-hold-against.ts';

/** The tempo changes where the longest beat is so many times the shortest. Our judgement. */
const changes = 1.02;

/**
 * The clicks to be found by when they were put out: those of a click whose tempo changes. One that keeps its tempo is found by
 * that, whoever played it.
 *
 * @example clicksToFind({ times: [0, 0.5, 1], sounds, calibrated: false, uncertaintyMs: 0 }) // undefined
 */
export function clicksToFind(played: PlayedClick | undefined): readonly ClickTimes[] | undefined {
  const { times = [], sounds } = played ?? {};
  const { least, most } = extent(times.slice(1).map((time, i) => time - times[i]!));
  return most >= changes * least ? sounds : undefined;
}

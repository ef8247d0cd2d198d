import type { ListeningTake } from './listening-take.ts';
import { beatAt } from './round-span.ts';

const before = 1;

/** Where to begin so that a moment is heard in its place: with its beat, else a second before. s */
export function fromBefore(take: ListeningTake, time: number): number {
  const beat = beatAt(take, time);
  const from = beat === null ? Number.POSITIVE_INFINITY : take.beats.from[beat]!;
  return Math.max(0, from <= time + before / 10 ? Math.min(from, time) : time - before);
}

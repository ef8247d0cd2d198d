import type { Played } from '../../core/progress/rest-due.ts';
import { readKept, writeKept } from '../shell/kept.ts';

/** What is longer ago plays no part in the rest that is due, ms. */
const lately = 3 * 3_600_000;
const key = 'played';

/** Stretches of playing of the last hours on this device. */
export function playedLately(now: number): Played[] {
  const kept = readKept(key);
  return (Array.isArray(kept) ? kept : []).filter(
    (one): one is Played =>
      typeof one?.from === 'number' && typeof one?.to === 'number' && now - one.to < lately,
  );
}

export function notePlayed(played: Played): void {
  writeKept(key, [...playedLately(played.to), played]);
}

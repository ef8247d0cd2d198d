import type { Reason } from '../result/take-result.ts';

/**
 * The tempo that a piece of advice comes to, BPM: the lowest one it names; null where it names none.
 *
 * @example advisedBpm({ code: 'tempo-up', facts: { bpm: 100, fromBpm: 104, toBpm: 106 } }) // 104
 */
export function advisedBpm({ code, facts }: Reason): number | null {
  // What needs a second day is to be played as it was, whatever comes after it.
  const named = code === 'tempo-needs-second-day' ? facts.bpm : (facts.fromBpm ?? facts.toBpm ?? facts.bpm);
  return typeof named === 'number' ? Math.round(named) : null;
}

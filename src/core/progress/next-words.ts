import { dimensionName } from '../result/names.ts';
import type { Reason } from '../result/take-result.ts';

/**
 * The tempo to try next in a few words, for lists of many exercises; `sentence` says it in full.
 *
 * @example nextWords({ code: 'tempo-up', facts: { bpm: 100, fromBpm: 104, toBpm: 106 } }) // 'up to 104–106 BPM'
 */
export function nextWords({ code, facts }: Reason): string {
  const { bpm, fromBpm, toBpm, dimension } = facts;
  const range = fromBpm === toBpm ? whole(toBpm) : `${whole(fromBpm)}–${whole(toBpm)}`;
  switch (code) {
    case 'tempo-up':
      return `up to ${range} BPM`;
    case 'tempo-needs-second-day':
      return `${whole(bpm)} BPM once more on another day, then up`;
    case 'tempo-stay':
      return `stay at ${whole(bpm)} BPM, weakest: ${dimensionName(String(dimension)).toLowerCase()}`;
    case 'tempo-down':
      return `down to ${whole(toBpm)} BPM`;
    case 'tempo-after-rest':
      return `${whole(bpm)} BPM after a rest, in shorter takes`;
    case 'tempo-settle-first':
      return 'none before it is clear which one was meant';
    case 'tempo-waits-for-discomfort':
      return 'none while discomfort is noted';
    default:
      return `start at ${range} BPM`;
  }
}

const whole = (bpm: unknown): string => Number(bpm).toFixed(0);

import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { clearWindows, leftOver, matchSeconds } from './click-match.ts';
import { soundLead } from './click-seed.ts';
import type { FoundClicks } from './find-clicks.ts';

/** With less than this share of a click's power at its place there is no click (our judgement: −6 dB). */
const absent = 0.25;
/** So many places without a click end it, if they outnumber those that have one this many times (our judgement). */
const enough = { absent: 3, times: 4 };

/** Whether a metronome is silent before its first click and after its last. */
export interface SilentBeyond {
  readonly before: boolean;
  readonly after: boolean;
}

/**
 * Whether places of the grid before the first and after the last click found show that the metronome is silent there:
 * the stroke that covers a click mostly comes a little late, and where less is heard until then than the click alone
 * would sound, none did. Where strokes or noise cover every place, nothing is shown. Linear in the recording's length.
 *
 * @example silentBeyond(source, findClicks(source, attacks)!).after // true where the player went on without it
 */
export function silentBeyond(source: Source, { period, times, voices }: FoundClicks): SilentBeyond {
  const rate = source.sampleRate;
  const count = Math.round(matchSeconds * rate);
  const end = source.length / rate - 0.02;
  const { sound } = voices[0]!;
  const isSilent = (first: number, step: number): boolean => {
    let without = 0;
    let having = 0;
    for (let due = first; due > 0 && due < end; due += step) {
      const heard = readAt(source, due, count);
      if (leftOver(heard, sound, rate) < absent) having++;
      else if (leastShare(heard, sound, rate) < absent) without++;
    }
    return without >= Math.max(enough.absent, enough.times * having);
  };
  return {
    before: isSilent(times[0]! - soundLead - period, -period),
    after: isSilent(times.at(-1)! - soundLead + period, period),
  };
}

/** Least power heard in the windows in which a click may be seen, as a share of the click's own there. */
function leastShare(heard: Float32Array, sound: Float32Array, rate: number): number {
  const power = (samples: Float32Array, seconds: number) =>
    samples.subarray(0, Math.round(seconds * rate)).reduce((sum, x) => sum + x * x, 1e-20);
  return Math.min(...clearWindows.map((seconds) => power(heard, seconds) / power(sound, seconds)));
}

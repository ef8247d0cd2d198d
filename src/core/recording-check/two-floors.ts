import { anyBetween } from '../stats/any-between.ts';
import { binSeconds } from './quiet-course.ts';
import type { SoundFeatures } from './sound-pass.ts';

/** A level is held for so many bins of 6 ms, within so much, dB. */
const held = { bins: 4, withinDb: 3 };
/**
 * What sounded before fell to the upper level by so much, dB, within so many bins: a tone's own steady level isn't one.
 */
const broughtDown = { leastDb: 6, bins: 12 };
/**
 * From the upper level to the lower one by so much, dB, within so many bins. Rendered gates: 18; soft pads recorded at
 * 22.05 kHz come to 13 by themselves, some 35 ms after a stroke. Our judgement.
 */
const step = { leastDb: 15, mostDb: 45, bins: 4 };
/** The lower level is that of pauses, within so much, dB. */
const nearPauseDb = 3;
/** A metronome's beep swells, stays level and ends at once: so long after one nothing is asked, s. */
const beepSeconds = 0.15;
/** Nothing lies under this: a third of the last bit's flicker at 24 bits. */
const leastPower = 1e-15;

/**
 * How often a sound falls to a steady level, stays there, and falls once more to that of pauses: a place has one floor,
 * and what a gate holds open for a while has two.
 *
 * @param pauseDb Level of pauses, dB of the mean square step.
 * @param sounds All that was heard, in order: only behind strokes on the pad is it asked, since speech and rattling sticks
 * come to a stop twice as well.
 * @param clicks Clicks of a metronome, s, ascending.
 */
export function twoFloors(
  { bright, frameRate }: Pick<SoundFeatures, 'bright' | 'frameRate'>,
  pauseDb: number,
  sounds: readonly { readonly time: number; readonly sound: string }[],
  clicks: readonly number[] = [],
): number {
  const width = Math.max(1, Math.round(binSeconds * frameRate));
  const levels = new Float64Array(Math.floor(bright.length / width));
  for (let bin = 0; bin < levels.length; bin++) {
    let sum = 0;
    for (let k = bin * width; k < (bin + 1) * width; k++) sum += bright[k]!;
    levels[bin] = 10 * Math.log10(sum / width + leastPower);
  }
  const middleOf = (from: number): number | null => {
    let [low, high, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
    for (let bin = from; bin < from + held.bins; bin++) {
      const level = levels[bin]!;
      low = Math.min(low, level);
      high = Math.max(high, level);
      sum += level;
    }
    return high - low <= held.withinDb ? sum / held.bins : null;
  };
  let count = 0;
  let last = -1;
  for (let end = broughtDown.bins + held.bins; end + step.bins + held.bins <= levels.length; end++) {
    const at = (end * width) / frameRate;
    while (last + 1 < sounds.length && sounds[last + 1]!.time < at) last++;
    if (sounds[last]?.sound !== 'pad' || anyBetween(clicks, at - beepSeconds, at)) continue;
    const lower = middleOf(end + step.bins);
    if (lower === null || Math.abs(lower - pauseDb) > nearPauseDb) continue;
    const upper = middleOf(end - held.bins);
    if (upper === null || upper - lower < step.leastDb || upper - lower > step.mostDb) continue;
    let loudest = Number.NEGATIVE_INFINITY;
    for (let bin = end - held.bins - broughtDown.bins; bin < end - held.bins; bin++)
      loudest = Math.max(loudest, levels[bin]!);
    if (loudest - upper < broughtDown.leastDb) continue;
    count++;
    end += step.bins + held.bins;
  }
  return count;
}

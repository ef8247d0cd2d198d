/** A stretch in which the signal stands still although there is sound after it. */
export interface StandStill {
  readonly at: number;
  readonly samples: number;
  /** Whether sound broke off there; elsewhere it had faded. */
  readonly broken: boolean;
  /** By how much the loudest of the sound soon after it is louder than the sound before, dB. */
  readonly gainDb: number;
}

/** Samples a second, and the step that they are stored in, full scale 1. */
interface StoredSound {
  readonly sampleRate: number;
  readonly step: number;
}

/** Shorter than this is no loss that matters, s. */
const standStillSeconds = 0.0015;
const besideSeconds = 0.004;
/** A drum's low modes take so long to swell, in stretches of that. */
const swells = 5;
/** Sound that can't stand still by chance: its root mean square in steps that it is stored in. */
const leastSteps = 2;
/** A wave's own crest lasts less than as many of its usual changes from sample to sample: on a sine to 10. */
const leastChanges = 16;
/** A wave that goes by no more than a step from sample to sample may stand still, and so may one at its end. */
const slowSteps = 1.5;
const leastPower = 1e-15;

/** Adds the stretches that end between `from` and `to` to `found`. The block holds sound before and after these. */
export function standStillsIn(
  block: Float32Array,
  from: number,
  to: number,
  start: number,
  { sampleRate, step }: StoredSound,
  found: StandStill[],
): void {
  const fewest = Math.max(2, Math.round(standStillSeconds * sampleRate) + 1);
  // Of a run of `fewest` samples two that are so far apart are looked at in any case.
  const stride = Math.floor(fewest / 2);
  for (let k = 0; k + stride < to; k += stride) {
    const value = block[k]!;
    if (block[k + stride] !== value) continue;
    let first = k;
    while (first > 0 && block[first - 1] === value) first--;
    let end = k + 1;
    while (end < block.length && block[end] === value) end++;
    if (end - first >= fewest && end >= from && end < to) {
      const stretch = standStillAt(block, end, end - first, start, { sampleRate, step });
      if (stretch !== null) found.push(stretch);
    }
    k += stride * Math.floor((end - 1 - k) / stride);
  }
}

/** The run of `samples` equal ones before sample `i`, or null where silence or the last bit's flicker follows. */
function standStillAt(
  block: Float32Array,
  i: number,
  samples: number,
  start: number,
  { sampleRate, step }: StoredSound,
): StandStill | null {
  const first = i - samples;
  const width = Math.round(besideSeconds * sampleRate);
  const least = (leastSteps * step) ** 2;
  const after = besideOf(block, i, width);
  if (after.power <= least) return null;
  const before = first < width ? silent : besideOf(block, first - width + 1, width);
  let loudest = after.power;
  for (let k = 1; k < swells; k++) loudest = Math.max(loudest, besideOf(block, i + k * width, width).power);
  const broken = before.power > least && breaksOff(before, after, block[first]!, samples / width, step);
  return {
    at: start + first,
    samples,
    broken,
    gainDb: 10 * Math.log10(loudest / (before.power + leastPower)),
  };
}

/** Sound beside a stretch: its power about its mean, extremes, largest step, and how often it changes. */
interface Beside {
  readonly power: number;
  readonly low: number;
  readonly high: number;
  readonly steepest: number;
  readonly changes: number;
}

const silent: Beside = { power: 0, low: 0, high: 0, steepest: 0, changes: 0 };

function besideOf(block: Float32Array, from: number, samples: number): Beside {
  let [sum, squares, changes, steepest] = [0, 0, 0, 0];
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = from; k < from + samples; k++) {
    const value = block[k] ?? 0;
    const size = Math.abs(value - (block[k - 1] ?? 0));
    sum += value;
    squares += value * value;
    if (size > 0) changes++;
    if (size > steepest) steepest = size;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { power: squares / samples - (sum / samples) ** 2, low, high, steepest, changes };
}

/** Whether sound of this kind doesn't stand still so long by itself, as slow waves do and those that are cut off flat. */
function breaksOff(before: Beside, after: Beside, value: number, widths: number, step: number): boolean {
  const changes = widths * Math.min(before.changes, after.changes);
  const slow = Math.max(before.steepest, after.steepest) <= slowSteps * step;
  const high = Math.max(before.high, after.high);
  const low = Math.min(before.low, after.low);
  const crest = value >= high - slowSteps * step || value <= low + slowSteps * step;
  return changes >= leastChanges && !slow && !crest;
}

import { fineStep } from '../signal/coarse-samples.ts';

/** A wave cut off flat. */
export interface FlatTop {
  /** Its first sample, and how many there are. */
  readonly at: number;
  readonly samples: number;
  /** Where it was cut, with sign, full scale 1. */
  readonly level: number;
  /** How far the wave would have gone beyond, dB: as a parabola with the slopes at both edges. */
  readonly overDb: number;
}

/** Samples of a cut top stand still but for so many steps of those that they are stored in. */
export const flatTopSteps = 2.5;
/** Lower ones don't matter even where a quiet file was made of a cut one. */
export const leastTop = 0.05;
const fewestSamples = 3;
/** A wave's own crest stands still for fewer samples, where the steps beside it are as steep as this asks. */
const surelyCut = 5;
/** Shorter runs that go less beyond than this are crests, dB: rendered takes that nothing cut come to 0.4. */
const crestDb = 0.6;
/** A cut comes at full slope; a wave's own crest is left gently, at a few times the step that counts as still. */
const steepest = 6 * flatTopSteps;

/**
 * The run of `samples` still ones before sample `i`, stored in steps of `step`, as a cut-off top, or null where it is a wave's own crest or a rest.
 */
export function flatTopAt(
  block: Float32Array,
  i: number,
  samples: number,
  start: number,
  step = fineStep,
): FlatTop | null {
  // A crest stands still for longer where its steps are large.
  if (samples < (step > fineStep ? surelyCut : fewestSamples)) return null;
  const first = i - samples;
  const level = block[i - 1]!;
  if (first < 1) return null;
  const sign = level > 0 ? 1 : -1;
  const isCut = samples >= surelyCut;
  const rise = edge(block, first, -1, sign, isCut);
  const fall = edge(block, i - 1, 1, sign, isCut);
  if (Math.min(rise.step, fall.step) < steepest * step) return null;
  const width = samples - 1 + rise.before + fall.before;
  const beyond = (((rise.slope + fall.slope) / 2) * width) / 4;
  const overDb = 20 * Math.log10(1 + beyond / Math.abs(level));
  return isCut || overDb >= crestDb ? { at: start + first, samples, level, overDb } : null;
}

/**
 * Where the wave reached the cut beside its outermost sample `at`, in the direction `out`: its slope there, a sample,
 * the step to that sample, which the cut may have shortened, and how long before it the cut began, samples. What may be
 * a crest is judged by its own steps.
 */
function edge(block: Float32Array, at: number, out: 1 | -1, sign: number, isCut: boolean) {
  const outside = block[at + out]!;
  const step = sign * (block[at]! - outside);
  const earlier = sign * (outside - (block[at + 2 * out] ?? outside));
  const slope = isCut && earlier > 0 ? earlier : step;
  return { step, slope, before: isCut ? Math.min(1, step / slope) : 0 };
}

/** What the meter shows; levels in dBFS, −Infinity for silence. */
export interface Levels {
  readonly peakDb: number;
  readonly rmsDb: number;
  /** The highest peak of the last seconds. */
  readonly heldDb: number;
  /** Whether the input was cut at full scale since the meter began. */
  readonly clipped: boolean;
}

export interface Meter {
  readonly levels: Levels;
  /** Peak held and for how long yet, s; frames at full scale in a row at the end of the last block. */
  readonly held: { readonly peak: number; readonly left: number };
  readonly fullScaleRun: number;
  /** Smoothed power. */
  readonly power: number;
}

/** So long a peak stays, s. Common practice. */
const holdSeconds = 1.5;
/** Averaging time of the power, s: fast enough to show strokes, slow enough to read. Our judgement. */
const averagingSeconds = 0.3;
/** This near full scale and so often in a row is a flat top: a 16-bit device's highest step is 0.99997. Common practice. */
const fullScale = 0.9999;
const flatTop = 3;

const decibels = (magnitude: number) => 20 * Math.log10(magnitude);

export const meterAtRest: Meter = {
  levels: { peakDb: -Infinity, rmsDb: -Infinity, heldDb: -Infinity, clipped: false },
  held: { peak: 0, left: 0 },
  fullScaleRun: 0,
  power: 0,
};

/**
 * The meter after another block of samples.
 *
 * @example meterStep(meterAtRest, Float32Array.of(0.5, -0.5), 48000).levels.peakDb // −6.02
 */
export function meterStep(meter: Meter, block: Float32Array, sampleRate: number): Meter {
  if (block.length === 0) return meter;
  let { fullScaleRun, power } = meter;
  let { clipped } = meter.levels;
  let peak = 0;
  const follow = 1 - Math.exp(-1 / (averagingSeconds * sampleRate));
  for (const sample of block) {
    const magnitude = Math.abs(sample);
    if (magnitude > peak) peak = magnitude;
    fullScaleRun = magnitude >= fullScale ? fullScaleRun + 1 : 0;
    if (fullScaleRun >= flatTop) clipped = true;
    power += follow * (sample * sample - power);
  }
  const seconds = block.length / sampleRate;
  const isHigher = peak >= meter.held.peak || meter.held.left <= seconds;
  const held = isHigher
    ? { peak, left: holdSeconds }
    : { peak: meter.held.peak, left: meter.held.left - seconds };
  return {
    levels: {
      peakDb: decibels(peak),
      rmsDb: 10 * Math.log10(power),
      heldDb: decibels(held.peak),
      clipped,
    },
    held,
    fullScaleRun,
    power,
  };
}

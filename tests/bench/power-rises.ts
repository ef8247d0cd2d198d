/** A stroke heard by a rise of power alone. */
export interface PowerRise {
  /** s from the first sample given. */
  readonly time: number;
  /** dBFS of its loudest stretch. */
  readonly levelDb: number;
}

export interface PowerFollowed {
  /** Samples given so far. */
  readonly heard: number;
  /** Samples of the hop that is not yet full, after differencing. */
  readonly energy: number;
  readonly inHop: number;
  readonly before: number;
  /** Level of the background, dB. */
  readonly floorDb: number;
  /** Levels of the last hops, newest last, dB. */
  readonly recent: readonly number[];
  /** s of the last stroke. */
  readonly last: number;
}

export const nothingFollowed: PowerFollowed = {
  heard: 0,
  energy: 0,
  inHop: 0,
  before: 0,
  floorDb: -60,
  recent: [],
  last: Number.NEGATIVE_INFINITY,
};

/** s of a hop; s in which a second rise is taken for the same stroke; dB over floor and over the hops before. Our judgement. */
const hopSeconds = 0.003;
const apart = 0.05;
const overFloor = 12;
const rise = 4;
const looksBack = 4;

/** dB a second at which the floor follows upwards, and the share of the way down at each hop. */
const floorRises = 6;
const floorFalls = 0.05;

/**
 * The simplest that may be called hearing while one plays, to hold the program against: rises of the differenced signal's
 * power over the hops just before and over the background, block by block.
 */
export function followPower(
  hearing: PowerFollowed,
  block: Float32Array,
  sampleRate: number,
): { readonly hearing: PowerFollowed; readonly strokes: readonly PowerRise[] } {
  const hop = Math.round(hopSeconds * sampleRate);
  const strokes: PowerRise[] = [];
  const recent = [...hearing.recent];
  let { energy, inHop, before, floorDb, last, heard } = hearing;
  for (const sample of block) {
    energy += (sample - before) ** 2;
    before = sample;
    inHop += 1;
    heard += 1;
    if (inHop < hop) continue;
    const levelDb = 10 * Math.log10(energy / hop + 1e-12);
    const time = (heard - hop) / sampleRate;
    const loudest = Math.max(...recent, floorDb);
    if (levelDb > floorDb + overFloor && levelDb > loudest + rise && time - last >= apart) {
      strokes.push({ time, levelDb });
      last = time;
    }
    floorDb =
      levelDb < floorDb ? floorDb + floorFalls * (levelDb - floorDb) : floorDb + floorRises * hopSeconds;
    recent.push(levelDb);
    if (recent.length > looksBack) recent.shift();
    energy = 0;
    inHop = 0;
  }
  return { hearing: { heard, energy, inHop, before, floorDb, recent, last }, strokes };
}

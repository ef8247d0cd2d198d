/** How accents and taps of a take sound, dBFS. */
export interface LevelModel {
  readonly accentDb: number;
  readonly tapDb: number;
  readonly accentSpreadDb: number;
  readonly tapSpreadDb: number;
  /** Share of accents among the strokes expected. */
  readonly accentShare: number;
}

/** What a stroke's level says: log-likelihood (nats) as an accent and as a tap, against not knowing which. */
export interface LevelEvidence {
  readonly asAccent: Float64Array;
  readonly asTap: Float64Array;
}

/** Spreads outside these bounds are not believed, dB (our judgement). */
const spreadBounds = { min: 1, max: 6 };
/** Accents and taps closer together than this many spreads tell nothing of the phase (our judgement). */
const leastSeparation = 1.2;
/** Enough for the two levels to stand still (our judgement). */
const rounds = 30;
/**
 * Share of strokes played with the other level by mistake, and of strokes that are neither: those anywhere within 60
 * dB. Measured: half to twice aligns 120 simulated takes the same, twice the first a little worse.
 */
const swapped = 0.07;
const neither = 0.02;
const anyLevel = 1 / 60;

const normal = (x: number, mean: number, spread: number): number =>
  Math.exp(-0.5 * ((x - mean) / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));

/** A spread within what is believed, dB. */
export const boundSpread = (spread: number): number =>
  Math.min(spreadBounds.max, Math.max(spreadBounds.min, spread));

/** Whether accents and taps can be told apart by level. */
export const separated = ({ accentDb, tapDb, accentSpreadDb, tapSpreadDb }: LevelModel): boolean =>
  accentDb - tapDb > leastSeparation * Math.max(accentSpreadDb, tapSpreadDb);

/**
 * Two levels found in a list of strokes (dBFS) by expectation–maximisation for two normal distributions
 * (Dempster, Laird & Rubin 1977). Null when the exercise asks for one level only or no two can be told apart.
 */
export const findLevels = (levels: readonly number[], accentShare: number): LevelModel | null => {
  if (levels.length < 6 || accentShare <= 0 || accentShare >= 1) return null;
  const sorted = [...levels].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  let share = accentShare;
  let accentDb = at(1 - accentShare / 2);
  let tapDb = at((1 - accentShare) / 2);
  let accentSpreadDb = boundSpread((accentDb - tapDb) / 4);
  let tapSpreadDb = accentSpreadDb;
  for (let round = 0; round < rounds; round++) {
    let weight = 0;
    let sum = 0;
    let restSum = 0;
    const member = levels.map((level) => {
      const accent = share * normal(level, accentDb, accentSpreadDb);
      const tap = (1 - share) * normal(level, tapDb, tapSpreadDb);
      return (accent + 1e-9) / (accent + tap + 2e-9);
    });
    for (let i = 0; i < levels.length; i++) {
      weight += member[i]!;
      sum += member[i]! * levels[i]!;
      restSum += (1 - member[i]!) * levels[i]!;
    }
    if (weight < 1 || weight > levels.length - 1) return null;
    accentDb = sum / weight;
    tapDb = restSum / (levels.length - weight);
    let squares = 0;
    let restSquares = 0;
    for (let i = 0; i < levels.length; i++) {
      squares += member[i]! * (levels[i]! - accentDb) ** 2;
      restSquares += (1 - member[i]!) * (levels[i]! - tapDb) ** 2;
    }
    accentSpreadDb = boundSpread(Math.sqrt(squares / weight));
    tapSpreadDb = boundSpread(Math.sqrt(restSquares / (levels.length - weight)));
    share = Math.min(0.9, Math.max(0.1, weight / levels.length));
  }
  const model = { accentDb, tapDb, accentSpreadDb, tapSpreadDb, accentShare };
  return separated(model) ? model : null;
};

/** What each stroke's level (dBFS) says under a model; nothing at all without one. */
export const levelEvidence = (levels: ArrayLike<number>, model: LevelModel | null): LevelEvidence => {
  const asAccent = new Float64Array(levels.length);
  const asTap = new Float64Array(levels.length);
  if (model === null) return { asAccent, asTap };
  for (let i = 0; i < levels.length; i++) {
    const level = levels[i]!;
    const accent = normal(level, model.accentDb, model.accentSpreadDb);
    const tap = normal(level, model.tapDb, model.tapSpreadDb);
    const known = 1 - swapped - neither;
    const ifAccent = known * accent + swapped * tap + neither * anyLevel;
    const ifTap = known * tap + swapped * accent + neither * anyLevel;
    const either = model.accentShare * ifAccent + (1 - model.accentShare) * ifTap;
    asAccent[i] = Math.log(ifAccent / either);
    asTap[i] = Math.log(ifTap / either);
  }
  return { asAccent, asTap };
};

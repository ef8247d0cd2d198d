import { energyOf } from '../signal/energy-of.ts';

/** What a stroke's level stands on: energies and samples at the rate at which it was measured. */
interface LevelGround {
  /** Energy taken for the stroke's. */
  readonly stroke: number;
  /** Energy taken for what was left of the tail and the noise under it. */
  readonly missed: number;
  /** The stroke with the predicted tail taken off. */
  readonly found: Float32Array;
  /** Sound like the one that was left under the stroke: what the same prediction left just before. */
  readonly left: Float32Array;
}

/** A prediction misses less of the sound that it was fitted to than of what comes; fitted to rendered takes in noise. */
const missesMore = 1.25;

/**
 * Standard error of a level, dB. The sound left under the stroke adds its own energy, which is known about, and twice
 * its product with the stroke, which may have either sign: how large that is, the products with the sound left just
 * before show, moved through all places. So a low hum under a low stroke counts for more than hiss of the same power.
 *
 * Var E = 4·mean(⟨found, left⟩²) + 2·missed²/n, where n is the number of independent samples in `left`, from its
 * circular autocorrelation r: L·r₀²/Σr².
 *
 * @example levelError({ stroke: 1, missed: 0, found, left: new Float32Array(found.length) }) // 0
 */
export function levelError({ stroke, missed, found, left }: LevelGround): number {
  const length = Math.min(found.length, left.length);
  const energy = energyOf(left, 0, length);
  if (energy === 0 || missed === 0) return 0;
  let products = 0;
  let repeats = 0;
  for (let lag = 0; lag < length; lag++) {
    let product = 0;
    let repeat = 0;
    for (let i = 0, j = lag; i < length; i++, j = j + 1 === length ? 0 : j + 1) {
      product += found[i]! * left[j]!;
      repeat += left[i]! * left[j]!;
    }
    products += product * product;
    repeats += repeat * repeat;
  }
  const cross = ((4 * missesMore * missed) / energy) * (products / length);
  const spread = (2 * missed * missed * repeats) / (length * energy * energy);
  return (10 / Math.LN10 / stroke) * Math.sqrt(cross + spread);
}

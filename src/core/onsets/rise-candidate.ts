/** A place where the power of the recording rises. */
export interface RiseCandidate {
  /** Frame of the rise (see `bandLayout`). */
  readonly frame: number;
  /** Log-likelihood ratio of a rise against none, nats, bands summed, each band's share bounded. */
  readonly evidence: number;
  /** Mean power of each band, the highest first, in the six frames before, and in the two and twelve from the rise on. */
  readonly before: readonly number[];
  readonly attack: readonly number[];
  readonly body: readonly number[];
  /** Mean power of each band 25 to 40 frames after the rise: how fast the sound dies away. */
  readonly after: readonly number[];
}

/** The rises of a recording and the power it never falls below for long. */
export interface RisesFound {
  readonly rises: readonly RiseCandidate[];
  /** Median over blocks of the quietest tenth of frames, all bands together; linear power, full-scale sine = ½. */
  readonly floorPower: number;
}

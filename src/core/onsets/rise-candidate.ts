/** Frames round a rise over which powers are taken: those before it, and from it on. */
export const riseFrames = { before: 6, attack: 2, body: 12, after: { from: 25, to: 40 } } as const;

/** A place where the power of the recording rises. */
export interface RiseCandidate {
  /** Frame of the rise (see `bandLayout`). */
  readonly frame: number;
  /** Log-likelihood ratio of a rise against none, nats, bands summed, each band's share bounded. */
  readonly evidence: number;
  /** Mean power of each band, the highest first, in the `riseFrames` of the same name; linear, full-scale sine = ½. */
  readonly before: readonly number[];
  readonly attack: readonly number[];
  readonly body: readonly number[];
  /** How fast the sound dies away. */
  readonly after: readonly number[];
}

/** The rises of a recording and the power it never falls below for long. */
export interface RisesFound {
  readonly rises: readonly RiseCandidate[];
  /** Median over blocks of the quietest tenth of frames, all bands together; linear power, full-scale sine = ½. */
  readonly floorPower: number;
}

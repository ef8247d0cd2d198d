/** Samples as the audio thread hands them over. */
export interface CapturedBlock {
  /** The audio context's frame at which the block begins. */
  readonly frame: number;
  readonly samples: Float32Array<ArrayBuffer>;
  /** The clock on the wall when it was handed over, ms. */
  readonly clockMs: number;
}

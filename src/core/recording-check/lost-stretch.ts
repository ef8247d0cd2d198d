/** A stretch that isn't in the recording: what follows comes early by so much, and stays so. */
export interface LostStretch {
  /** s of the recording; its length, s. */
  readonly time: number;
  readonly seconds: number;
}

/** Bytes that can be read at any place, whether they stand in memory, in a file or in a browser's blob. */
export interface Bytes {
  readonly length: number;
  /**
   * The bytes from `from` up to but not including `to`, both within 0 … length. The caller leaves them as they are;
   * they may stand in `room`, where that is given.
   */
  read(from: number, to: number, room?: Uint8Array): Uint8Array;
}

/**
 * A recording that can be read again and again, a block at a time, so that its length never decides how much
 * memory the analysis needs. `read` returns `to - from` samples of one channel at full scale ±1; frames before 0
 * or past `length` read as silence, so that a window may hang over either end.
 */
export interface Source {
  /** Frames per second, Hz. */
  readonly sampleRate: number;
  readonly channels: number;
  /** Frames in the recording. */
  readonly length: number;
  /**
   * Channel counted from 0, frames from `from` up to but not including `to`. The caller may change the array. Who reads a
   * long recording block by block gives `room` for a block, and the samples may stand there.
   */
  read(channel: number, from: number, to: number, room?: Float32Array): Float32Array;
}

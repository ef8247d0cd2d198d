/**
 * A piece of a sound put somewhere: `from` to `to` of the sound, s, begins `at` seconds in what is heard. It comes in
 * over its first `fadeIn` seconds and goes on for `fadeOut` seconds behind `to` while it goes out, so that a piece that
 * begins where the one before it ends takes over without a click.
 */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  /** Factor. */
  readonly gain: number;
  readonly fadeIn: number;
  readonly fadeOut: number;
}

/** A click of the even beat, at seconds of what is heard; strong at the first beat of a bar. */
export interface Click {
  readonly at: number;
  readonly strong: boolean;
}

/** What is heard: pieces and clicks along `length` seconds, and over again where it goes round. */
export interface Arrangement {
  /** In order of `at`. */
  readonly pieces: readonly Piece[];
  readonly clicks: readonly Click[];
  readonly length: number;
  readonly goesRound: boolean;
}

/**
 * What each departure from playing straight through costs, as log probabilities (nats), and the densities
 * that go with them. Densities are per typical slot spacing, so that they hold at every tempo.
 * All values: our judgement of how often each happens in practice takes; the search is not sensitive to
 * a factor of two in any of them.
 */
export const prices = {
  /** A slot without a stroke; further ones in a row come cheaper. */
  missed: Math.log(0.025),
  missedAgain: Math.log(0.1),
  /** The sheet's first slot without a stroke: what is heard first is mostly what was played first. */
  firstMissed: Math.log(0.004),
  /** A written grace note that was played / left out. */
  gracePlayed: Math.log(2),
  graceMissed: Math.log(0.1),
  /** A stroke outside every run. */
  outside: Math.log(0.8),
  /** A partial left out or put in while the pulse goes on; two of them. */
  slip: Math.log(0.0012),
  slipTwo: Math.log(0.0002),
  /** Finding back to the click at one stroke, right after it was silent. */
  caughtUp: Math.log(0.2),
  /** Stopping within a line and going on with the next slot. */
  hesitation: Math.log(0.0006),
  /** The written rest between two lines not kept. */
  restNotKept: Math.log(0.3),
  /** Going on in time with another bar than the written one. */
  anotherRepeat: Math.log(0.01),
  lineLeftOut: Math.log(0.01),
  countLost: Math.log(0.002),
  /** Where a run may begin when none came before; lines share theirs, and so do bars. */
  beginAtSheet: Math.log(0.75),
  beginAtLine: Math.log(0.1),
  beginAtBar: Math.log(0.05),
  /** Where a run may begin after another was left; the last two are shared as above. */
  resumeNextBar: Math.log(0.2),
  againFromBar: Math.log(0.05),
  /** Shared by all earlier bars of the line. */
  againFromEarlierBar: Math.log(0.2),
  againFromRepeat: Math.log(0.05),
  againFromLine: Math.log(0.1),
  againFromSheet: Math.log(0.1),
  resumeNextLine: Math.log(0.1),
  anyLine: Math.log(0.1),
  anyBar: Math.log(0.03),
  /** Where a run may end. */
  endOfSheet: 0,
  endOfLine: Math.log(0.1),
  endOfBar: Math.log(0.04),
  endAnywhere: Math.log(0.02),
  /** A run left, or begun, while strokes go on without a pause. */
  noPause: Math.log(0.05),
  /** The take ends before the sheet does. */
  stoppedEarly: Math.log(0.02),
} as const;

/** What a stroke that nothing asked for costs inside a run: anywhere, and as a bounce close behind another. */
export interface StrayPrices {
  readonly extra: number;
  readonly bounce: number;
}

/** Of one player. */
export const ownStrays: StrayPrices = { extra: Math.log(0.015), bounce: Math.log(0.05) };
/**
 * While others are heard playing: almost as many strokes come between as on slots. Measured: from 0.3 to 0.5 the same
 * takes are laid alike.
 */
export const strangersStrays: StrayPrices = { extra: Math.log(0.4), bounce: Math.log(0.15) };

/**
 * Price of a stroke so many scatters off its due time, nats: how much lower Student's t distribution with four degrees of
 * freedom is there than in its middle.
 *
 * @example offPrice(0) // 0
 */
export const offPrice = (scatters: number): number => 2.5 * Math.log1p(scatters ** 2 / 4);

/** A bounce comes at most this long after its stroke, s (common practice: 20 to 60 ms). */
const latestBounce = 0.07;
/** At fast tempos a bounce keeps to this share of the space its stroke has (our judgement). */
const bounceShare = 0.4;
/** Time (s) behind a stroke within which another is its bounce; `room` is the time to its nearest neighbour slot. */
export const bounceReach = (room: number): number => Math.min(latestBounce, bounceShare * room);
/** A grace note comes between these times before its main stroke, s (common practice: 10 to 60 ms). */
export const graceAtLeast = 0.006;
export const graceWithin = 0.085;
/** A pause is longer than this many of the typical spacings (our judgement). */
export const pauseSpacings = 2.5;
/** Time over which a start after a stop is spread, s (our judgement). */
export const pauseSpread = 4;

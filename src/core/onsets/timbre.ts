import { type RiseCandidate, riseFrames } from './rise-candidate.ts';

/** How an attack sounds, apart from its level: dB figures, and for each how far noise and tails may have moved it. */
export interface Timbre {
  /** Attack in each band, then body in each band, against their mean; then attack against body; then decay. */
  readonly values: readonly number[];
  /** Standard error of each value from what it stands in, dB. */
  readonly errors: readonly number[];
  /** The next sound begins within its body. */
  readonly cut: boolean;
}

/**
 * Least share of a power that is left as a sound's own, and the largest error of what is left, dB. Measured on 25
 * rendered takes: the same strokes with half to twice the first and with twice the second; with half of it one that
 * isn't there.
 */
const [leastOwn, mostError] = [0.05, 12];

/** What is left of a power once what was there before is taken off, dB, with its error. */
function gained(power: number, before: number): { db: number; error: number } {
  const own = Math.max(power - before, leastOwn * power);
  // The power before ripples by about its own size in a few milliseconds.
  return { db: 10 * Math.log10(own), error: Math.min(mostError, (10 / Math.LN10) * (before / own)) };
}

/** Error of a figure that the next sound covers, the share of what was before that is still there at a sound's end (the
 * ringing before it has decayed further), and the longest decay, dB. Measured: half to twice finds the same strokes. */
const unknownDb = 12;
const beforeAtEnd = 1 / 4;
const mostDecayDb = 40;

/**
 * Timbre of a sound from the band powers round its rise. `alone` is the number of frames to the next rise: figures
 * that reach into it are marked as not known.
 */
export function timbreOf({ before, attack, body, after }: RiseCandidate, alone: number): Timbre {
  const bands = before.length;
  const parts = [...attack, ...body].map((power, i) => gained(power, before[i % bands]!));
  const mean = parts.reduce((sum, { db }) => sum + db, 0) / parts.length;
  const values = parts.map(({ db }) => db - mean);
  const bodyError = alone < riseFrames.body ? unknownDb : 0;
  const endError = alone < riseFrames.after.to ? unknownDb : 0;
  const errors = parts.map(({ error }, i) => (i < bands ? error : Math.hypot(error, bodyError)));
  const total = (powers: readonly number[]) => powers.reduce((sum, power) => sum + power, 0);
  const start = gained(total(attack), total(before));
  const whole = gained(total(body), total(before));
  const end = gained(total(after), beforeAtEnd * total(before));
  // Concatenated, not spread: a list that was pushed to keeps twice the room.
  return {
    values: values.concat(start.db - whole.db, Math.min(mostDecayDb, whole.db - end.db)),
    errors: errors.concat(
      Math.hypot(start.error, whole.error, bodyError),
      Math.hypot(whole.error, end.error, endError, bodyError),
    ),
    cut: bodyError > 0,
  };
}

/** Root mean square error of what can be known of a timbre, dB: how well it is heard at all. */
export function timbreError({ errors, cut }: Timbre): number {
  const known = cut ? errors.slice(0, (errors.length - 2) / 2) : errors;
  return Math.hypot(...known) / Math.sqrt(known.length);
}

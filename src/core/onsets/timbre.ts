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

/** What is left of a power once what was there before is taken off, dB, with its error; never less than a twentieth. */
function gained(power: number, before: number): { db: number; error: number } {
  const own = Math.max(power - before, power / 20);
  // The power before ripples by about its own size in a few milliseconds.
  return { db: 10 * Math.log10(own), error: Math.min(12, (10 / Math.LN10) * (before / own)) };
}

const unknownDb = 12;

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
  const end = gained(total(after), total(before) / 4);
  // Concatenated, not spread: a list that was pushed to keeps twice the room.
  return {
    values: values.concat(start.db - whole.db, Math.min(40, whole.db - end.db)),
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

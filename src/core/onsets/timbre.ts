import type { RiseCandidate } from './rise-candidates.ts';

/** How an attack sounds, apart from its level: dB figures, and for each how far noise and tails may have moved it. */
export interface Timbre {
  /** Attack in each band, then body in each band, against the sound's own mean; then attack against body; then decay. */
  readonly values: readonly number[];
  /** Standard error of each value from what it stands in, dB. */
  readonly errors: readonly number[];
}

/** What is left of a power once what was there before is taken off, dB, with its error; never less than a twentieth. */
function gained(power: number, before: number): { db: number; error: number } {
  const own = Math.max(power - before, power / 20);
  // The power before ripples by about its own size in a few milliseconds.
  return { db: 10 * Math.log10(own), error: Math.min(12, (10 / Math.LN10) * (before / own)) };
}

/** Timbre of a sound from the band powers round its rise. */
export function timbreOf({ before, attack, body, after }: RiseCandidate): Timbre {
  const bands = before.length;
  const parts = [...attack, ...body].map((power, i) => gained(power, before[i % bands]!));
  const mean = parts.reduce((sum, { db }) => sum + db, 0) / parts.length;
  const values = parts.map(({ db }) => db - mean);
  const errors = parts.map(({ error }) => error);
  const total = (powers: Float32Array) => powers.reduce((sum, power) => sum + power, 0);
  const start = gained(total(attack), total(before));
  const whole = gained(total(body), total(before));
  const end = gained(total(after), total(before) / 4);
  return {
    values: [...values, start.db - whole.db, Math.min(40, whole.db - end.db)],
    errors: [...errors, Math.hypot(start.error, whole.error), Math.hypot(whole.error, end.error)],
  };
}

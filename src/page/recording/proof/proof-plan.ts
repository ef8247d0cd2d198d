import { testPulse } from '../pulses/test-pulse.ts';

/**
 * What a pulse is there for. `loud` and `soft` alternate; `after-silence` ones are as soft, `faint` ones softer yet,
 * each behind more than a second without a sound.
 */
export type ProofPart = 'loud' | 'soft' | 'after-silence' | 'faint';

export interface ProofPlan {
  readonly pulses: readonly { readonly at: number; readonly part: ProofPart }[];
  /** A steady rustle about as soft as the soft pulses, s. */
  readonly rustle: { readonly from: number; readonly to: number };
  /** Peak of the loud pulses, dBFS, and how far the others lie under them, dB. */
  readonly loudDb: number;
  readonly underDb: Readonly<Record<ProofPart, number>>;
  readonly seconds: number;
}

/** Taps lie 10 to 34 dB under accents. */
const underDb = { loud: 0, soft: 20, 'after-silence': 20, faint: 32 } as const;
const lead = 0.3;
/** Distances inside a round, s: uneven, so that no other shift than the true one fits. */
const round = { soft: 0.34, loud: 0.71, softAgain: 1.13, afterSilence: 2.55, faint: 3.9 };
const rounds = [0, 4.35, 8.83];
const roundSeconds = 4.2;

/**
 * Three rounds of loud, soft, loud, soft, silence, soft, silence, faint; then silence and a rustle. About 16 s.
 *
 * @example proofPlan().pulses.filter(({ part }) => part === 'loud').length // 6
 */
export function proofPlan(loudDb = -6): ProofPlan {
  const pulses = rounds.flatMap((start) => {
    const at = (seconds: number) => lead + start + seconds;
    return [
      { at: at(0), part: 'loud' },
      { at: at(round.soft), part: 'soft' },
      { at: at(round.loud), part: 'loud' },
      { at: at(round.softAgain), part: 'soft' },
      { at: at(round.afterSilence), part: 'after-silence' },
      { at: at(round.faint), part: 'faint' },
    ] as const;
  });
  const from = lead + rounds.at(-1)! + roundSeconds + 0.8;
  const rustle = { from, to: from + 1.6 };
  return { pulses, rustle, loudDb, underDb, seconds: rustle.to + 0.8 };
}

/** The plan as samples. The rustle is the same each time: steps of the minimal standard generator (Park & Miller 1988). */
export function renderProof(plan: ProofPlan, sampleRate: number): Float32Array<ArrayBuffer> {
  const out = new Float32Array(Math.ceil(plan.seconds * sampleRate));
  const { cosine } = testPulse(sampleRate);
  for (const { at, part } of plan.pulses) {
    const size = 10 ** ((plan.loudDb - plan.underDb[part]) / 20);
    const from = Math.round(at * sampleRate);
    cosine.forEach((x, n) => {
      out[from + n]! += size * x;
    });
  }
  const size = 10 ** ((plan.loudDb - plan.underDb.soft) / 20);
  const from = Math.round(plan.rustle.from * sampleRate);
  const length = Math.round((plan.rustle.to - plan.rustle.from) * sampleRate);
  const edge = 0.03 * sampleRate;
  let state = 1;
  let before = 0;
  for (let n = 0; n < length; n++) {
    state = (state * 48271) % 2147483647;
    const white = (2 * state) / 2147483647 - 1;
    const swell = Math.min(1, n / edge, (length - n) / edge);
    // The difference to the sample before takes the lows away, which small loudspeakers don't sound.
    out[from + n] = 1.2 * size * swell * (white - before);
    before = white;
  }
  return out;
}

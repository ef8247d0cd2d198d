/** A time between samples at which strength is greatest near `from` … `to`, and how strong it is there. */
interface StrengthPeak {
  readonly at: number;
  readonly strength: number;
}

/** Sound that came a roundabout way is at least this much weaker than what comes first, or else comes with it. */
const firstShare = 0.6;
/** So long before the strongest arrival a nearer one is looked for, s. */
const earlier = 0.004;

/** The strongest place of a stretch, by a parabola through its neighbours; samples. */
export function strongest(strength: Float32Array, from: number, to: number): StrengthPeak {
  let best = Math.max(1, Math.round(from));
  const end = Math.min(strength.length - 2, Math.round(to));
  for (let n = best; n <= end; n++) if (strength[n]! > strength[best]!) best = n;
  return vertex(strength, best);
}

function vertex(strength: Float32Array, n: number): StrengthPeak {
  const [a, b, c] = [strength[n - 1] ?? 0, strength[n] ?? 0, strength[n + 1] ?? 0];
  const bend = a - 2 * b + c;
  const shift = bend < 0 ? Math.min(0.5, Math.max(-0.5, (a - c) / (2 * bend))) : 0;
  return { at: n + shift, strength: b - ((a - c) * shift) / 4 };
}

/** The first arrival of a pulse in a stretch: the strongest, or one a little before it that is nearly as strong. */
export function firstArrival(
  strength: Float32Array,
  from: number,
  to: number,
  sampleRate: number,
): StrengthPeak {
  const most = strongest(strength, from, to);
  const begin = Math.max(1, Math.round(Math.max(from, most.at - earlier * sampleRate)));
  for (let n = begin; n < most.at - 1; n++) {
    const here = strength[n]!;
    if (here < firstShare * most.strength) continue;
    if (here >= strength[n - 1]! && here >= strength[n + 1]!) return vertex(strength, n);
  }
  return most;
}

/**
 * By how much later all pulses of a pattern sound than they were sent, samples: the lag at which their strengths, each
 * bounded by the pattern's usual one, add up to most. Pulses at uneven distances make it unambiguous.
 */
export function commonLag(strength: Float32Array, sentAt: readonly number[], mostLag: number): number {
  // The median of a pulse-free stretch bounds nothing; the greatest strength near each pulse tells the usual size.
  const peaks = sentAt.map((at) => strongest(strength, at, at + mostLag).strength).sort((a, b) => a - b);
  const usual = peaks[Math.floor(peaks.length / 2)] ?? 0;
  const sums = new Float64Array(Math.round(mostLag) + 1);
  for (const at of sentAt) {
    const from = Math.round(at);
    for (let lag = 0; lag < sums.length; lag++) {
      // Smoothed over a few samples, so that fractions of a sample from pulse to pulse don't part them.
      const near = Math.max(
        strength[from + lag - 2] ?? 0,
        strength[from + lag] ?? 0,
        strength[from + lag + 2] ?? 0,
      );
      sums[lag]! += Math.min(near, usual);
    }
  }
  let best = 0;
  for (let lag = 1; lag < sums.length; lag++) if (sums[lag]! > sums[best]!) best = lag;
  return best;
}

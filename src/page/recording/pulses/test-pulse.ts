/** Length of a test pulse, s, and the frequencies it runs through, Hz: what small loudspeakers and telephones pass. */
export const pulseSeconds = 0.012;
const fromHz = 1200;
const toHz = 6500;

/** A pulse and its companion a quarter turn later: together they tell a pulse's size whatever its phase. */
export interface TestPulse {
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

/**
 * A short rising tone under a raised-cosine window, peak about 1: a tick to the ear, and as sharp in a matched filter
 * as its bandwidth of 5 kHz allows (about 0.2 ms). Linear sweep, phase 2π(f₀t + (f₁ − f₀)t²/2T).
 *
 * @example testPulse(48000).cosine.length // 576
 */
export function testPulse(sampleRate: number): TestPulse {
  const length = Math.round(pulseSeconds * sampleRate);
  const cosine = new Float64Array(length);
  const sine = new Float64Array(length);
  for (let n = 0; n < length; n++) {
    const t = n / sampleRate;
    const phase = 2 * Math.PI * (fromHz * t + ((toHz - fromHz) * t * t) / (2 * pulseSeconds));
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / length);
    cosine[n] = window * Math.cos(phase);
    sine[n] = window * Math.sin(phase);
  }
  return { cosine, sine };
}

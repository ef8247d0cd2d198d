import { pulseStrength } from '../pulses/pulse-strength.ts';
import { testPulse } from '../pulses/test-pulse.ts';
import type { ProofPlan } from './proof-plan.ts';

/** Stretches of the rustle that are compared, s from its beginning and from its end. */
const start = { from: 0.08, to: 0.4 };
const end = { from: 0.5, to: 0.1 };
/** The rustle must stand so far over the noise at its beginning, as a ratio of powers. */
const overNoise = 4;

/**
 * By how much a steady sound changes while it lasts, dB, in the pulses' band and with the noise's power taken off; null
 * where it drowns in the noise. A suppressor of steady noise lowers it, gain control may lift it.
 */
export function steadyChange(
  samples: Float32Array,
  { rustle }: ProofPlan,
  lag: number,
  sampleRate: number,
): number | null {
  const from = Math.max(0, Math.round((rustle.from + lag - 0.7) * sampleRate));
  const strength = pulseStrength(samples.subarray(from), testPulse(sampleRate));
  const power = (begin: number, stop: number) => {
    const a = Math.round((begin + lag) * sampleRate) - from;
    const b = Math.round((stop + lag) * sampleRate) - from;
    const part = strength.subarray(Math.max(0, a), Math.max(0, b));
    return part.length === 0 ? 0 : part.reduce((sum, x) => sum + x * x, 0) / part.length;
  };
  const noise = power(rustle.from - 0.6, rustle.from - 0.1);
  const first = power(rustle.from + start.from, rustle.from + start.to) - noise;
  const last = power(rustle.to - end.from, rustle.to - end.to) - noise;
  if (first < overNoise * noise || first <= 0) return null;
  return 10 * Math.log10(Math.max(last, 1e-4 * first) / first);
}

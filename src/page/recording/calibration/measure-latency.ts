import { mad, madToSd } from '../../../core/stats/mad.ts';
import { median } from '../../../core/stats/median.ts';
import { commonLag, firstArrival } from '../pulses/find-lag.ts';
import { pulseStrength } from '../pulses/pulse-strength.ts';
import { strengthNoise } from '../pulses/strength-noise.ts';
import { testPulse } from '../pulses/test-pulse.ts';
import type { CalibrationPlan } from './calibration-plan.ts';

/** What a loopback recording tells of the delay. */
export type LatencyOutcome =
  | {
      readonly state: 'measured';
      /** From sending to recording, s: the median. */
      readonly latency: number;
      /** Standard error of it, s. */
      readonly se: number;
      /** Scatter from pulse to pulse, s (1.4826 × median absolute deviation). */
      readonly spread: number;
      readonly found: number;
      readonly of: number;
    }
  | { readonly state: 'not-heard' }
  | { readonly state: 'unsteady'; readonly spread: number; readonly latency: number };

/** Longest delay looked for, s: wireless ones lie near 0.2 s, some near 0.5 s. Common practice. */
const mostLatency = 1;
/** A pulse is heard where it stands so far out of the noise; noise alone does that once in e¹⁸ samples. */
const heardOver = 6;
/** Pulses that must be heard, as a share. Our judgement. */
const leastShare = 0.6;
/** Pulses may lie so far from their common lag, s. */
const search = 0.03;
/** A wired or built-in output keeps its delay to a fraction of a millisecond; beyond this it isn't one delay, s. */
const mostSpread = 0.003;
/** Timing by a filter of 5 kHz through an unknown loudspeaker is no better than this, s. Our judgement. */
const leastSe = 0.0001;

/**
 * Measures the delay from loudspeaker to recording in a recording that begins when the plan does. Pulses that noise or
 * a door covered are left out; the median over the others is the delay, with standard error 1.2533·spread/√n (of a
 * median of normal errors).
 *
 * @example measureLatency(samples, calibrationPlan(), 48000) // { state: 'measured', latency: 0.0412, … }
 */
export function measureLatency(
  samples: Float32Array,
  plan: CalibrationPlan,
  sampleRate: number,
): LatencyOutcome {
  const strength = pulseStrength(samples, testPulse(sampleRate));
  const noise = strengthNoise(strength, 0, strength.length);
  const sentAt = plan.times.map((time) => time * sampleRate);
  const lag = commonLag(strength, sentAt, mostLatency * sampleRate);
  const reach = search * sampleRate;
  const found = sentAt.flatMap((at) => {
    const peak = firstArrival(strength, at + lag - reach, at + lag + reach, sampleRate);
    return peak.strength > Math.max(heardOver * noise, 1e-5) ? [{ ...peak, lag: peak.at - at }] : [];
  });
  if (found.length < leastShare * sentAt.length) return { state: 'not-heard' };
  // What is far weaker than most is a chance peak beside a pulse that was covered.
  const usual = median(found.map((peak) => peak.strength));
  const lags = found.filter((peak) => peak.strength > 0.25 * usual).map((peak) => peak.lag / sampleRate);
  if (lags.length < leastShare * sentAt.length) return { state: 'not-heard' };
  const latency = median(lags);
  const spread = madToSd * mad(lags);
  // Where nearly half of the pulses lie elsewhere, the median deviation doesn't see them.
  const astray = lags.filter((one) => Math.abs(one - latency) > mostSpread).length;
  if (spread > mostSpread || 4 * astray > lags.length) return { state: 'unsteady', spread, latency };
  const se = Math.max(leastSe, (1.2533 * spread) / Math.sqrt(lags.length));
  return { state: 'measured', latency, se, spread, found: lags.length, of: sentAt.length };
}

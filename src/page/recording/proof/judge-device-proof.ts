import { mean } from '../../../core/stats/mean.ts';
import { median } from '../../../core/stats/median.ts';
import { commonLag, strongest } from '../pulses/find-lag.ts';
import { pulseStrength } from '../pulses/pulse-strength.ts';
import { strengthNoise, withoutNoise } from '../pulses/strength-noise.ts';
import { testPulse } from '../pulses/test-pulse.ts';
import type { DeviceHabit, DeviceProof, LevelDifference, ProofVerdict } from './device-proof.ts';
import type { ProofPart, ProofPlan } from './proof-plan.ts';
import { steadyChange } from './steady-change.ts';

/** Longest way from loudspeaker to recording, s: wireless outputs. */
const mostLag = 1;
/** Loud clicks must stand so far out of the noise to be heard, and soft ones, expected 20 dB lower, to be judged. */
const heardOver = 8;
const judgedOver = 4;
/**
 * What a level may be off without a device meddling, dB: small loudspeakers press a loud click by about 1 dB, and a
 * meddling of 2 dB in 20 shifts an accent-to-tap ratio of 12 dB by 1.2. Our judgement.
 */
const toleranceDb = 2;
/** From here on a sound isn't turned down but cut off, dB. Our judgement. */
const cutDb = 12;
/** A steady sound that sinks so far is taken for noise and suppressed, dB. */
const steadyDb = 2;
const flatTop = 0.999;

const nothing = {
  habits: [],
  difference: null,
  afterSilence: null,
  faint: null,
  steady: null,
  drift: null,
  loudestDb: null,
};

/**
 * Whether a device records levels as they are, from a recording that begins when the plan does. Each click's size is
 * told by a matched filter at the delay that all loud clicks share; standard errors come from the noise between them.
 * A finding needs the whole 95 % interval beyond the tolerance.
 *
 * @example judgeDeviceProof(samples, proofPlan(), 48000).verdict // 'obeyed'
 */
export function judgeDeviceProof(samples: Float32Array, plan: ProofPlan, sampleRate: number): DeviceProof {
  const strength = pulseStrength(samples, testPulse(sampleRate));
  const sent = (part: ProofPart) =>
    plan.pulses.filter((pulse) => pulse.part === part).map(({ at }) => at * sampleRate);
  const loudSent = sent('loud');
  const lag = commonLag(strength, loudSent, mostLag * sampleRate);
  const near = 0.001 * sampleRate;
  const at = (time: number) => strongest(strength, time + lag - near, time + lag + near).strength;
  const loudHeard = loudSent.map(at);
  // Before the first click, where neither a gate nor an echo has been touched off; and between rounds.
  const first = loudSent[0]! + lag;
  const before = strengthNoise(strength, 0.02 * sampleRate, Math.max(first - near, 0.1 * sampleRate));
  const betweenAt = sent('faint')[0]! + lag;
  const between = strengthNoise(strength, betweenAt - 0.5 * sampleRate, betweenAt - 0.05 * sampleRate);
  const noise = Math.max(before, between, 1e-6);

  const heard = loudHeard.filter((size) => size > heardOver * noise).length;
  if (heard < loudSent.length - 1) return { verdict: 'not-heard', ...nothing };
  const begin = Math.round(first);
  const peak = samples.subarray(begin).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  if (peak >= flatTop) return { verdict: 'too-loud', ...nothing };

  const sizeOf = (part: ProofPart) => sent(part).map((time) => withoutNoise(at(time), noise));
  const loud = sizeOf('loud');
  const usual = median(loud);
  const expected = (part: ProofPart) => usual * 10 ** (-plan.underDb[part] / 20);
  if (expected('soft') < judgedOver * noise) return { verdict: 'too-soft', ...nothing };

  const soft = sizeOf('soft');
  const difference = apart(loud, soft, noise);
  const afterSilence = apart(sizeOf('after-silence'), soft, noise);
  const tellsFaint = expected('faint') >= judgedOver * noise;
  const toExpected = apart(sizeOf('faint'), [expected('faint')], noise);
  const faint = tellsFaint ? toExpected : null;
  const drift = 20 * Math.log10(mean(loud.slice(-2)) / mean(loud.slice(0, 2)));
  const steady = steadyChange(samples, plan, lag / sampleRate, sampleRate);

  const asked = plan.underDb.soft - plan.underDb.loud;
  const found = new Set<DeviceHabit>();
  const sinks = steady !== null && steady < -steadyDb;
  const after = [afterSilence, ...(faint === null ? [] : [faint])];
  const isCut = after.some((d) => d.high < -cutDb) || difference.low > asked + cutDb;
  const isLowered = after.some((d) => d.high < -toleranceDb) || difference.low > asked + toleranceDb;
  if (sinks) found.add('noise-suppression');
  if (isCut || (isLowered && !sinks)) found.add('gating');
  const isPressed = difference.high < asked - toleranceDb;
  const isLifted = afterSilence.low > toleranceDb || (steady !== null && steady > steadyDb);
  if (isPressed || isLifted || Math.abs(drift) > toleranceDb) found.add('gain-control');
  const order: readonly DeviceHabit[] = ['gating', 'noise-suppression', 'gain-control'];
  const habits = order.filter((habit) => found.has(habit));
  const verdict: ProofVerdict = habits[0] ?? 'obeyed';
  const loudestDb = 20 * Math.log10(peak);
  return { verdict, habits, difference, afterSilence, faint, steady, drift, loudestDb };
}

/** First sizes less second ones, in decibels of their means, with the interval that the noise makes. */
function apart(first: readonly number[], second: readonly number[], noise: number): LevelDifference {
  const [a, b] = [mean(first), mean(second)];
  const value = 20 * Math.log10(a / b);
  const relative = Math.hypot(
    noise / (Math.max(a, noise) * Math.sqrt(first.length)),
    noise / (Math.max(b, noise) * Math.sqrt(second.length)),
  );
  const half = (1.96 * 20 * relative) / Math.LN10;
  return { value, low: value - half, high: value + half };
}

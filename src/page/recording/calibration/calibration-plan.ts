import { pulseSeconds, testPulse } from '../pulses/test-pulse.ts';

/** Pulses sent to measure the delay from loudspeaker to recording. */
export interface CalibrationPlan {
  /** When each begins, s from the start of what is played. */
  readonly times: readonly number[];
  /** Peak of a pulse, dBFS. */
  readonly levelDb: number;
  /** Length of what is played, s. */
  readonly seconds: number;
}

/** Distances between pulses, s: uneven, so that no other shift than the true one fits. */
const distances = [0.31, 0.43, 0.37, 0.53, 0.29, 0.47, 0.41, 0.35, 0.51, 0.33, 0.45];
const lead = 0.25;
/** After the last pulse, s: the longest delay that is looked for, and some rest. */
const tail = 1.1;

/**
 * Twelve pulses in six seconds.
 *
 * @example calibrationPlan().times.length // 12
 */
export function calibrationPlan(levelDb = -12): CalibrationPlan {
  const times = [lead];
  for (const distance of distances) times.push(times.at(-1)! + distance);
  return { times, levelDb, seconds: times.at(-1)! + pulseSeconds + tail };
}

/** The plan as samples. */
export function renderCalibration(plan: CalibrationPlan, sampleRate: number): Float32Array<ArrayBuffer> {
  const out = new Float32Array(Math.ceil(plan.seconds * sampleRate));
  const { cosine } = testPulse(sampleRate);
  const size = 10 ** (plan.levelDb / 20);
  for (const time of plan.times) {
    const from = Math.round(time * sampleRate);
    cosine.forEach((x, n) => {
      out[from + n]! += size * x;
    });
  }
  return out;
}

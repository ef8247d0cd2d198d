import { describe, expect, it } from 'vitest';
import { microphones } from '../../../../fixtures/generator/microphone.ts';
import { seeded } from '../../../../fixtures/generator/random.ts';
import {
  calibrationPlan,
  renderCalibration,
} from '../../../../src/page/recording/calibration/calibration-plan.ts';
import { measureLatency } from '../../../../src/page/recording/calibration/measure-latency.ts';
import { type Loop, throughLoop } from '../loop.ts';

const rate = 48000;
const plan = calibrationPlan();
const measured = (samples: Float32Array, sampleRate = rate) => {
  const outcome = measureLatency(samples, plan, sampleRate);
  if (outcome.state !== 'measured') throw new Error(outcome.state);
  return outcome;
};
const loop = (change: Partial<Loop>, sampleRate = rate) =>
  throughLoop(renderCalibration(plan, sampleRate), sampleRate, change);

describe('measureLatency', () => {
  it.each([
    ['nothing but a delay', { delay: 0.0412, noiseDb: null }],
    ['none at all', { delay: 0 }],
    ['a long one', { delay: 0.31234 }],
    ['a faint click', { gainDb: -38 }],
    ['a noisy place', { noiseDb: -38, gainDb: -14 }],
    ['a telephone', { microphone: microphones.phone }],
    ['a laptop', { microphone: microphones.laptop }],
    ['a gate', { microphone: microphones.gate }],
    ['gain control', { microphone: microphones['gain-control'] }],
    ['a clipping microphone', { microphone: microphones.clipping, gainDb: 6 }],
    ['a bedroom', { room: 0 }],
    ['a living room', { room: 1 }],
    ['a bare room', { room: 3 }],
  ] as [string, Partial<Loop>][])('finds the delay within half a millisecond: %s', (_, change) => {
    for (const sampleRate of [44100, 48000]) {
      const outcome = measured(loop(change, sampleRate), sampleRate);
      expect(Math.abs(outcome.latency - (change.delay ?? 0.0412))).toBeLessThan(0.0005);
      expect(outcome.found).toBe(12);
      expect(outcome.spread).toBeLessThan(0.0005);
    }
  });

  it('leaves out pulses that something covered', () => {
    const samples = loop({ room: 1 });
    const random = seeded(7);
    for (const covered of [plan.times[2]!, plan.times[7]!, plan.times[8]!]) {
      const from = Math.round((covered + 0.02) * rate);
      for (let n = from; n < from + 0.08 * rate; n++) samples[n] = 0.4 * random.normal(0, 1);
    }
    expect(Math.abs(measured(samples).latency - 0.0412)).toBeLessThan(0.0005);
  });

  it('hears nothing where nothing is', () => {
    const quiet = throughLoop(new Float32Array(plan.seconds * rate), rate, { noiseDb: -50 });
    expect(measureLatency(quiet, plan, rate)).toEqual({ state: 'not-heard' });
    expect(measureLatency(new Float32Array(plan.seconds * rate), plan, rate)).toEqual({ state: 'not-heard' });
  });

  it("finds a wireless output's delay unsteady", () => {
    const random = seeded(3);
    const at = plan.times.map((time) => time + 0.02 * random.uniform());
    const jittered = throughLoop(renderCalibration({ ...plan, times: at }, rate), rate, { delay: 0.18 });
    const outcome = measureLatency(jittered, plan, rate);
    expect(outcome.state).toBe('unsteady');
  });

  it('finds a delay that jumps half-way unsteady', () => {
    const at = plan.times.map((time, i) => (i < 8 ? time : time + 0.012));
    const jumped = throughLoop(renderCalibration({ ...plan, times: at }, rate), rate);
    expect(measureLatency(jumped, plan, rate).state).toBe('unsteady');
  });
});

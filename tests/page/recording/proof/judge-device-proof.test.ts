import { describe, expect, it } from 'vitest';
import { microphones, plainMicrophone } from '../../../../fixtures/generator/microphone.ts';
import { judgeDeviceProof } from '../../../../src/page/recording/proof/judge-device-proof.ts';
import { proofPlan, renderProof } from '../../../../src/page/recording/proof/proof-plan.ts';
import { type Loop, throughLoop } from '../loop.ts';
import { suppressSteady } from '../suppressing-device.ts';

const rate = 48000;
const plan = proofPlan();
const recorded = (change: Partial<Loop>) => throughLoop(renderProof(plan, rate), rate, change);
const judged = (change: Partial<Loop>) => judgeDeviceProof(recorded(change), plan, rate);

describe('judgeDeviceProof', () => {
  it.each([
    ['a plain microphone', {}],
    ['a telephone', { microphone: microphones.phone }],
    ['a laptop with hum', { microphone: microphones.laptop }],
    ['a bedroom', { room: 0 }],
    ['a living room', { room: 1, delay: 0.12 }],
    ['a school room', { room: 2 }],
    ['a bare room', { room: 3 }],
    ['a faint loudspeaker', { gainDb: -24, noiseDb: -70 }],
    ['a noisy place', { gainDb: -10, noiseDb: -50 }],
    ['a wireless loudspeaker', { delay: 0.43 }],
    ['a loudspeaker pressed by 1 dB', { microphone: { ...plainMicrophone, drive: 2 }, gainDb: 0 }],
  ] as [string, Partial<Loop>][])('finds that a device obeyed: %s', (_, change) => {
    for (const seed of [1, 2]) {
      const proof = judged({ ...change, seed });
      expect(proof).toMatchObject({ verdict: 'obeyed', habits: [] });
      expect(Math.abs(proof.difference!.value - 20)).toBeLessThan(1.6);
      expect(Math.abs(proof.afterSilence!.value)).toBeLessThan(1.5);
    }
  });

  it('measures 20 dB where 20 dB come back, and its interval holds them', () => {
    const proofs = Array.from({ length: 20 }, (_, seed) => judged({ seed, noiseDb: -52 }));
    const held = proofs.filter(({ difference }) => difference!.low <= 20 && difference!.high >= 20).length;
    // 16 or more of 20 happen with a chance of 0.997 at a coverage of 95 % (binomial).
    expect(held).toBeGreaterThanOrEqual(16);
  });

  it.each([0, -8, -16, -24])('finds a gate out at a gain of %s dB', (gainDb) => {
    for (const room of [null, 0, 1]) {
      const proof = judged({ gainDb, room, noiseDb: -62, microphone: microphones.gate });
      expect(proof.verdict).toBe('gating');
    }
  });

  it.each([0, -6, -12])('finds gain control out at a gain of %s dB', (gainDb) => {
    const microphone = microphones['gain-control'];
    const quiet = { ...microphone, gainControl: { ...microphone.gainControl, makeUpDb: 0 } };
    for (const room of [null, 1]) {
      expect(judged({ gainDb, room, microphone: quiet }).habits).toContain('gain-control');
    }
  });

  it.each([-4, -12])('finds a slow gain control out: gain %s dB', (gainDb) => {
    const gainControl = { thresholdDb: -50, ratio: 5, attackMs: 30, releaseMs: 2500, makeUpDb: 0 };
    expect(judged({ gainDb, microphone: { ...plainMicrophone, gainControl } }).habits).toContain(
      'gain-control',
    );
  });

  it.each([-68, -62, -56])('finds noise suppression out in noise of %s dB', (noiseDb) => {
    for (const room of [null, 1]) {
      const through = suppressSteady(recorded({ noiseDb, room, gainDb: -6 }), rate);
      const proof = judgeDeviceProof(through, plan, rate);
      expect(['noise-suppression', 'gating']).toContain(proof.verdict);
      expect(proof.habits.length).toBeGreaterThan(0);
    }
  });

  it("says that it couldn't be checked where the clicks don't reach the microphone", () => {
    expect(judged({ gainDb: -90 })).toMatchObject({ verdict: 'not-heard', difference: null });
    expect(judgeDeviceProof(new Float32Array(plan.seconds * rate), plan, rate).verdict).toBe('not-heard');
  });

  it("says that it can't be judged where they arrive too faintly or cut off", () => {
    expect(judged({ gainDb: -36, noiseDb: -44 }).verdict).toBe('too-soft');
    expect(judged({ gainDb: 9 }).verdict).toBe('too-loud');
  });
});

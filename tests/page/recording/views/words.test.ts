import { describe, expect, it } from 'vitest';
import { compareSetUp } from '../../../../src/core/progress/compare-set-up.ts';
import type { DeviceProof } from '../../../../src/page/recording/proof/device-proof.ts';
import { calibrationWords } from '../../../../src/page/recording/views/calibration-words.ts';
import { processingWords, roomWords } from '../../../../src/page/recording/views/microphone-words.ts';
import { proofWords } from '../../../../src/page/recording/views/proof-words.ts';
import { comparisonWords, handWords } from '../../../../src/page/recording/views/reference-words.ts';

const whole = /^[A-ZÄ].*\.$/;

describe('proofWords', () => {
  const proof: DeviceProof = {
    verdict: 'obeyed',
    habits: [],
    difference: { value: 19.94, low: 19.6, high: 20.2 },
    afterSilence: { value: 0, low: -0.2, high: 0.2 },
    faint: { value: -0.2, low: -0.8, high: 0.4 },
    steady: -0.1,
    drift: 0.05,
    loudestDb: -14.2,
  };
  it('says what was sent and what came back', () => {
    const { good, more } = proofWords(proof);
    expect(good).toBe(true);
    expect(more[0]).toBe(
      'Loud and soft ticks were sent 20 dB apart and came back 19.9 dB (between 19.6 and 20.2) apart.',
    );
    expect(more.at(-1)).toContain('−14 dB');
  });

  it.each(['gating', 'noise-suppression', 'gain-control', 'not-heard', 'too-soft', 'too-loud'] as const)(
    'says what to do about %s, in whole sentences',
    (verdict) => {
      const words = proofWords({ ...proof, verdict });
      expect(words.good).toBe(false);
      for (const sentence of [words.verdict, ...words.more]) expect(sentence).toMatch(whole);
      expect(words.more.length).toBeGreaterThan(0);
    },
  );

  it("claims nothing that couldn't be heard", () => {
    const text = proofWords({ ...proof, faint: null, steady: null }).more.join(' ');
    expect(text).toContain('nothing is known of those');
    expect(text).toContain("couldn't be heard");
  });
});

it('calibrationWords tells the delay with what it may be off, and why there is none', () => {
  const measured = {
    state: 'measured',
    latency: 0.0412,
    se: 0.0002,
    spread: 0.0003,
    found: 11,
    of: 12,
  } as const;
  expect(calibrationWords(measured).text).toContain('41.2 ms, known to 0.4 ms (11 of 12 ticks heard)');
  for (const by of ['name', 'latency', 'spread'] as const) {
    const words = calibrationWords({ state: 'wireless', by, latency: 0.21 });
    expect(words.good).toBe(false);
    expect(words.text).toContain('Nothing is said of ahead or behind');
  }
  expect(calibrationWords({ state: 'not-heard' }).text).toMatch(whole);
});

it('comparisonWords gives the interval and never blames the player alone', () => {
  const side = (mean: number, sd = 1) => ({ n: 8, mean, sd });
  const at = (mean: number) => ({ right: side(mean), left: side(mean) });
  expect(comparisonWords(compareSetUp(at(-20), at(-20)), '2 March 2026').good).toBe(true);
  const louder = comparisonWords(compareSetUp(at(-14), at(-20)), '2 March 2026').text;
  expect(louder).toContain('6.0 dB louder, +6.0 dB (between +5.3 and +6.7)');
  expect(louder).toContain(
    'The microphone stands elsewhere, its level was changed, or you play from another height',
  );
});

it('handWords, roomWords and processingWords', () => {
  expect(handWords({ state: 'heard', levels: { n: 8, mean: -20, sd: 1 } })).toBeNull();
  expect(handWords({ state: 'too-few', strokes: 5 })).toContain('Only 5 of eight');
  expect(roomWords({ verdict: 'noisy', noiseDb: -41.3 })).toContain('−41 dB');
  const off = {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    sampleRate: 48000,
    channels: 1,
  };
  expect(processingWords(off)).toBeNull();
  expect(processingWords({ ...off, autoGainControl: true })).toContain('automatic gain');
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { followSound, soundPass } from '../../../src/core/recording-check/sound-pass.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

/** Noise with bursts, cut tops, stretches that stand still or were heard before, and jumps. */
function damaged(sampleRate: number, seconds: number): Float32Array {
  const random = seeded('damaged');
  const samples = whiteNoise(Math.round(seconds * sampleRate), 0.002, 9);
  const places = Array.from({ length: 40 }, () =>
    Math.floor(random.between(0.05, seconds - 0.3) * sampleRate),
  );
  places.forEach((at, i) => {
    const length = Math.floor(random.between(0.002, 0.02) * sampleRate);
    if (i % 4 === 0)
      for (let n = 0; n < 1000; n++) samples[at + n]! += 2 * Math.sin(n / 9) * Math.exp(-n / 300);
    if (i % 4 === 1) samples.fill(samples[at]!, at, at + length);
    if (i % 4 === 2) samples.copyWithin(at, at - length, at);
    if (i % 4 === 3)
      samples.subarray(at).forEach((x, n, rest) => {
        if (n < 4000) rest[n] = x + 0.1;
      });
  });
  return samples.map((x) => Math.max(-0.3, Math.min(0.3, x)));
}

describe('followSound', () => {
  it.each([44_100, 22_050])(
    'gathers at %i Hz, however a recording comes in pieces, what one reading gathers',
    (rate) => {
      const samples = damaged(rate, 11.3);
      const whole = soundPass(floatSource(rate, samples), 0);
      const { flatTops, standStills, repeats, jumps } = whole;
      for (const [i, found] of [flatTops, standStills, repeats, jumps].entries())
        expect(found.length, `${i}`).toBeGreaterThan(2);
      for (const seed of [1, 2, 3]) {
        const random = seeded(seed);
        const follower = followSound(rate, 0);
        for (let come = 0; come < samples.length; come += Math.ceil(random.between(1, 2 * rate)))
          follower.goOn(floatSource(rate, samples.slice(0, come)));
        expect(follower.end(floatSource(rate, samples))).toEqual(whole);
      }
    },
  );

  it('gathers nothing of nothing', () => {
    expect(soundPass(floatSource(48_000, new Float32Array(7)), 0)).toMatchObject({ power: 0, jumps: [] });
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { talk } from '../../../fixtures/generator/talk.ts';
import { soundCharacter } from '../../../src/core/onsets/sound-character.ts';
import { floatSource } from '../../support/float-source.ts';
import { strokesInNoise } from '../../support/made-strokes.ts';
import { sine, whiteNoise } from '../../support/signals.ts';

describe('soundCharacter', () => {
  it.each([
    [16_000, 800],
    [44_100, 3000],
    [48_000, 6000],
    [96_000, 3000],
  ])('has the centroid of a tone at the tone: %i Hz, %i Hz', (rate, hz) => {
    const { centroidHz } = soundCharacter(floatSource(rate, sine(rate, rate, hz, 0.3)), 0.4);
    // Half a bin of about 50 Hz, and what leaks of a Hann window.
    expect(Math.abs(centroidHz - hz)).toBeLessThan(60);
  });

  it.each([90, 120, 180, 300])('hears a voice of %i Hz as voiced and held', (hz) => {
    const rate = 48_000;
    const vowel = Float32Array.from({ length: rate }, (_, n) => {
      let sum = 0;
      for (let h = 1; h * hz < 3000; h++) sum += Math.sin((2 * Math.PI * h * hz * n) / rate) / h;
      return 0.1 * sum;
    });
    const { voicing, heldDb } = soundCharacter(floatSource(rate, vowel), 0.3);
    expect(voicing).toBeGreaterThan(0.9);
    expect(Math.abs(heldDb)).toBeLessThan(1.5);
  });

  it('hears neither in noise, and a struck pad as not held', () => {
    const noise = soundCharacter(floatSource(48_000, whiteNoise(48_000, 0.1, 1)), 0.3);
    expect(noise.voicing).toBeLessThan(0.5);
    expect(Math.abs(noise.heldDb)).toBeLessThan(1);
    const samples = strokesInNoise(1, 48_000, [{ time: 0.3, levelDb: -10, seed: 1 }], -80);
    expect(soundCharacter(floatSource(48_000, samples), 0.3).heldDb).toBeLessThan(-15);
  });

  it('tells vowels of rendered talk from strokes more often than not', () => {
    const rate = 48_000;
    const { samples, events } = talk(12, rate, seeded(5));
    const source = floatSource(rate, Float32Array.from(samples));
    const voiced = events.filter((time) => {
      // Each syllable begins with a consonant of at most 0.16 s.
      const { voicing, heldDb } = soundCharacter(source, time + 0.16);
      return voicing > 0.6 && heldDb > -6;
    });
    expect(voiced.length / events.length).toBeGreaterThan(0.4);
  });

  it('gives numbers in silence', () => {
    const { centroidHz, voicing, heldDb } = soundCharacter(floatSource(48_000, new Float32Array(9000)), 0.05);
    for (const value of [centroidHz, voicing, heldDb]) expect(Number.isFinite(value)).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { suppressNoise } from '../../../fixtures/generator/damage/suppress-noise.ts';
import { limitBand } from '../../../fixtures/generator/microphone.ts';
import { addNoise } from '../../../fixtures/generator/noise.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { spectralUnevenness } from '../../../src/core/recording-check/spectral-unevenness.ts';
import { memorySource } from '../../bench/bench-take.ts';

const sampleRate = 48_000;
const noise = (colour: 'white' | 'pink' | 'room', levelDb: number, highHz = 24_000) => {
  const out = new Float64Array(4 * sampleRate);
  addNoise(out, colour, levelDb, sampleRate, seeded(`${colour} ${levelDb}`));
  limitBand(out, 20, highHz, sampleRate);
  return Float32Array.from(out);
};
const uneven = (samples: Float32Array) => spectralUnevenness(memorySource(samples, sampleRate), []);

describe('spectralUnevenness', () => {
  // A bin of noise has a power with an exponential distribution: its level has an SD of 10/ln 10 · π/√6 = 5.57 dB round its
  // own mean; less, round a median of which it is a part.
  it.each([
    ['white', -30, 24_000],
    ['white', -90, 24_000],
    ['pink', -50, 24_000],
    ['room', -60, 24_000],
    ['white', -50, 7000],
  ] as const)(
    'is that of noise, whatever its colour and level: %s, %i dBFS, up to %i Hz',
    (colour, levelDb, hz) => {
      const { levels, hiss } = uneven(noise(colour, levelDb, hz));
      expect(hiss).toBeGreaterThan(4.9);
      expect(hiss).toBeLessThan(5.2);
      expect(levels).toBeGreaterThan(4.8);
      expect(levels).toBeLessThan(5.35);
    },
  );

  it('grows with noise suppression', () => {
    const heard = [0, 12, 20, 30].map(
      (depthDb) =>
        uneven(suppressNoise(noise('pink', -50), sampleRate, { depthDb, marginDb: 12, openMs: 40 })).hiss,
    );
    expect(heard).toEqual([...heard].sort((a, b) => a - b));
    expect(heard[3]!).toBeGreaterThan(5.5);
  });

  it('says nothing of a recording without quiet, or without sound', () => {
    const sounds = Array.from({ length: 50 }, (_, i) => ({ time: i * 0.08 }));
    const source = memorySource(noise('white', -40), sampleRate);
    expect(spectralUnevenness(source, sounds).hiss).toBeNaN();
    expect(uneven(new Float32Array(4 * sampleRate)).hiss).toBeNaN();
  });
});

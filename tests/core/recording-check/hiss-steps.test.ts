import { expect, it } from 'vitest';
import { addNoise, type NoiseColour } from '../../../fixtures/generator/noise.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { hissSteps } from '../../../src/core/recording-check/hiss-steps.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { checkTakeSpec, tuningTakes } from '../../bench/check-takes.ts';
import { throughCodec } from '../../bench/codec.ts';
import { describeProgram } from '../../programs.ts';
import { resampled } from '../../support/resampled.ts';

const sampleRate = 48_000;
const noise = (colour: NoiseColour, levelDb: number, seed: number) => {
  const out = new Float64Array(8 * sampleRate);
  addNoise(out, colour, levelDb, sampleRate, seeded(`${colour} ${seed}`));
  return Float32Array.from(out);
};
const stepsOf = (samples: Float32Array, rate = sampleRate) => hissSteps(memorySource(samples, rate), []);

// The power of a bin of noise has an exponential distribution: the level of many together scatters by 10/ln 10 dB over the
// root of their number.
it.each([
  ['white', -40],
  ['white', -70],
  ['pink', -50],
  ['room', -50],
] as const)('is about 1 for noise of any colour and level: %s, %i dBFS', (colour, levelDb) => {
  for (const seed of [1, 2, 3]) {
    expect(stepsOf(noise(colour, levelDb, seed))).toBeGreaterThan(0.75);
    expect(stepsOf(noise(colour, levelDb, seed))).toBeLessThan(1.3);
  }
});

it('counts no noise that dies away evenly', () => {
  const samples = noise('white', -30, 4).map((x, i) => x * 10 ** (-i / sampleRate / 8));
  expect(stepsOf(samples)).toBeLessThan(1.3);
});

it('is more from block to block that differ', () => {
  const random = seeded('blocks');
  const gains = Array.from({ length: 500 }, () => 10 ** random.between(-0.15, 0.15));
  const samples = noise('white', -50, 5).map((x, i) => x * gains[Math.floor(i / 960)]!);
  expect(stepsOf(samples)).toBeGreaterThan(2);
});

it('tells nothing where there is no such hiss', () => {
  expect(stepsOf(new Float32Array(8 * sampleRate))).toBeNaN();
  expect(stepsOf(noise('white', -50, 6).subarray(0, sampleRate / 4))).toBeNaN();
  expect(stepsOf(noise('white', -50, 6), 16_000)).toBeNaN();
});

it('tells nothing where the recording once had a lower rate, and its highest hiss is only what resampling left', () => {
  const lower = resampled(noise('white', -50, 7), 22_050, sampleRate, 9800).subarray(0, 8 * sampleRate);
  const random = seeded('blocks');
  const gains = Array.from({ length: 500 }, () => 10 ** random.between(-0.15, 0.15));
  const withSteps = (levelDb: number) =>
    noise('white', levelDb, 5).map((x, i) => lower[i]! + x * gains[Math.floor(i / 960)]!);
  expect(stepsOf(withSteps(-60))).toBeGreaterThan(1.8);
  expect(stepsOf(withSteps(-80))).toBeNaN();
});

describeProgram('ffmpeg', 'what an encoder packs small', (ffmpeg) => {
  it('has steps in its hiss between strokes: Opus at 24 kbit/s', () => {
    const take = tuningTakes.find(({ name }) => name === 'laminate pad, bedroom')!;
    const { samples, sampleRate: rate, truth } = renderTake(checkTakeSpec(take, 8103).spec);
    const codec = { encoder: 'libopus', container: 'ogg', kilobits: 24 } as const;
    const packed = throughCodec(ffmpeg, samples, rate, codec);
    expect(hissSteps(memorySource(samples, rate), truth.strokes)).toBeLessThan(1.3);
    expect(hissSteps(memorySource(packed, rate), truth.strokes)).toBeGreaterThan(1.8);
  });
});

import { expect, it } from 'vitest';
import { liveStretch } from '../../../src/core/recording-check/live-stretch.ts';
import { soundPass } from '../../../src/core/recording-check/sound-pass.ts';

const sampleRate = 48_000;
const noise = (i: number) => ((i * 48_271) % 2_147_483_647) / 2_147_483_647 / 100;
const stretchOf = (samples: Float32Array) =>
  liveStretch(
    soundPass(
      {
        sampleRate,
        channels: 1,
        length: samples.length,
        read: (_, from, to) => Float32Array.from({ length: to - from }, (_, i) => samples[from + i] ?? 0),
      },
      0,
    ),
  );

it('leaves out exact silence before and behind the sound', () => {
  const samples = Float32Array.from({ length: 5 * sampleRate }, (_, i) =>
    i >= sampleRate && i < 3 * sampleRate ? noise(i * i) : 0,
  );
  const { from, to } = stretchOf(samples);
  expect(from).toBeCloseTo(1, 2);
  expect(to).toBeCloseTo(3, 2);
});

it('leaves out a block that comes again to the end', () => {
  const samples = Float32Array.from({ length: 3 * sampleRate }, (_, i) => noise(i * i));
  const block = 480;
  for (let i = 2 * sampleRate; i < samples.length; i++) samples[i] = samples[i - block]!;
  expect(stretchOf(samples).to).toBeCloseTo(2, 1);
});

it('is the whole of a recording otherwise', () => {
  const samples = Float32Array.from({ length: sampleRate }, (_, i) => noise(i * i));
  expect(stretchOf(samples)).toEqual({ from: 0, to: 1 });
});

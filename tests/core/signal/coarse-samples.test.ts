import { describe, expect, it } from 'vitest';
import { coarseSamples } from '../../../src/core/signal/coarse-samples.ts';
import { withStepNoise } from '../../../src/core/signal/step-noise.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const rounded = (samples: Float32Array, bits: number) =>
  samples.map((x) => Math.round(x * 2 ** (bits - 1)) / 2 ** (bits - 1));
/** Noise of about 5 % of full scale, then silence. */
const sound = () => {
  const samples = new Float32Array(2 * rate);
  samples.set(whiteNoise(rate, 0.05, 3));
  return samples;
};

describe('coarse samples', () => {
  it.each([8, 12, 13])('are known by their step, at %i bits', (bits) => {
    expect(coarseSamples(floatSource(rate, rounded(sound(), bits)))).toEqual({
      step: 2 ** (1 - bits),
      still: true,
    });
  });

  it.each([14, 16, 24])('are not seen at %i bits', (bits) => {
    expect(coarseSamples(floatSource(rate, rounded(sound(), bits)))).toBeNull();
  });

  it('are not seen in silence, in no sound at all, nor in pulses', () => {
    expect(coarseSamples(floatSource(rate, new Float32Array(rate)))).toBeNull();
    expect(coarseSamples(floatSource(rate, new Float32Array(0)))).toBeNull();
    const pulses = Float32Array.from({ length: rate }, (_, i) => (i % 1000 === 0 ? 0.5 : 0));
    expect(coarseSamples(floatSource(rate, pulses))).toBeNull();
  });

  it('whose steps are hidden by noise are told from those that stand still', () => {
    const hidden = rounded(whiteNoise(2 * rate, 0.5 / 128, 4), 8);
    expect(coarseSamples(floatSource(rate, hidden))).toEqual({ step: 1 / 128, still: false });
  });
});

describe('noise of steps', () => {
  const stored = floatSource(rate, rounded(sound(), 8));
  const smooth = withStepNoise(stored, coarseSamples(stored));

  it('moves each sample within its step, by another amount', () => {
    const moved = smooth.read(0, 0, 2 * rate).map((x, i) => 128 * (x - stored.read(0, i, i + 1)[0]!));
    expect(Math.max(...moved.subarray(0, 9000).map(Math.abs))).toBeLessThanOrEqual(0.5);
    const power = moved.reduce((sum, x) => sum + x * x, 0) / moved.length;
    expect(power).toBeCloseTo(1 / 12, 3);
    const beside = moved.reduce((sum, x, i) => sum + x * (moved[i + 1] ?? 0), 0) / moved.length;
    expect(Math.abs(beside / power)).toBeLessThan(0.02);
  });

  it('is the same however it is read, and leaves silence beyond the ends', () => {
    expect(smooth.read(0, 700, 705)).toEqual(smooth.read(0, 0, 1000).subarray(700, 705));
    expect([...smooth.read(0, -3, 0), ...smooth.read(0, 2 * rate, 2 * rate + 3)]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('is not put where the steps are hidden or fine', () => {
    expect(withStepNoise(stored, null)).toBe(stored);
    expect(withStepNoise(stored, { step: 1 / 128, still: false })).toBe(stored);
  });
});

import { describe, expect, it } from 'vitest';
import { levelError } from '../../../src/core/onsets/level-error.ts';
import { whiteNoise } from '../../support/signals.ts';

const length = 28;
const energy = (samples: Float32Array) => samples.reduce((sum, x) => sum + x * x, 0);
const tone = (cycles: number, phase: number) =>
  Float32Array.from({ length }, (_, n) => Math.sin((2 * Math.PI * cycles * n) / length + phase));
const plus = (a: Float32Array, b: Float32Array, gain: number) => a.map((x, n) => x + gain * b[n]!);

describe('levelError', () => {
  it('is nothing in silence', () => {
    const found = tone(3, 0);
    expect(levelError({ stroke: 1, missed: 0, found, left: new Float32Array(length) })).toBe(0);
    expect(levelError({ stroke: 1, missed: 0, found, left: new Float32Array(0) })).toBe(0);
  });

  it('is the scatter of levels of a stroke in noise', () => {
    const stroke = whiteNoise(length, 1, 1);
    const gain = 0.05;
    const trials = Array.from({ length: 400 }, (_, i) => {
      const found = plus(stroke, whiteNoise(length, 1, 2 * i + 10), gain);
      const left = whiteNoise(length, gain, 2 * i + 11);
      const error = levelError({ stroke: energy(stroke), missed: energy(left), found, left });
      return { off: 10 * Math.log10(energy(found) / energy(stroke)), error };
    });
    const scatter = Math.hypot(...trials.map(({ off }) => off)) / Math.sqrt(trials.length);
    const told = Math.hypot(...trials.map(({ error }) => error)) / Math.sqrt(trials.length);
    // A little more is told than is there: what a fitted prediction leaves of its own past is too little.
    expect(told / scatter).toBeGreaterThan(0.9);
    expect(told / scatter).toBeLessThan(1.35);
  });

  it("tells a hum in the stroke's own place from hiss of the same power", () => {
    const [found, hum] = [tone(1, 0), tone(1, 1)];
    const hiss = whiteNoise(length, Math.sqrt(energy(hum) / length), 3);
    const of = (left: Float32Array) =>
      levelError({ stroke: energy(found), missed: 0.01 * energy(left), found, left });
    expect(of(hum)).toBeGreaterThan(2 * of(hiss));
  });

  it('does not change with the gain', () => {
    const [found, left] = [whiteNoise(length, 1, 5), whiteNoise(length, 0.1, 6)];
    const louder = (samples: Float32Array) => samples.map((x) => 64 * x);
    const error = levelError({ stroke: energy(found), missed: energy(left), found, left });
    const same = { found: louder(found), left: louder(left) };
    expect(
      levelError({ stroke: energy(same.found), missed: energy(same.left), ...same }) / error,
    ).toBeCloseTo(1, 6);
  });
});

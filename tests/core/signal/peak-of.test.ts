import { expect, it } from 'vitest';
import { peakOf } from '../../../src/core/signal/peak-of.ts';

it('is the largest magnitude of either sign, of those asked for', () => {
  const samples = Float32Array.of(0.25, -0.5, 0.125);
  expect(peakOf(samples, 0, 3)).toBe(0.5);
  expect(peakOf(samples, 0, 1)).toBe(0.25);
  expect(peakOf(samples, 2, 3)).toBe(0.125);
  expect(peakOf(samples, 1, 1)).toBe(0);
});

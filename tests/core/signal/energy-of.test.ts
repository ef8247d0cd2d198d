import { expect, it } from 'vitest';
import { energyOf } from '../../../src/core/signal/energy-of.ts';

it('sums squares by hand, of all samples or of some', () => {
  expect(energyOf(Float32Array.of(1, 2, 3))).toBe(14);
  expect(energyOf(Float32Array.of(1, 2, 3), 1, 3)).toBe(13);
  expect(energyOf(Float32Array.of(1, 2, 3), 2, 2)).toBe(0);
});

import { expect, it } from 'vitest';
import { crossProducts } from '../../../src/core/signal/cross-products.ts';
import { whiteNoise } from '../../support/signals.ts';

it('sums products by hand', () => {
  expect([...crossProducts(Float32Array.of(1, 2), Float32Array.of(3, 4, 5), 2, 2)]).toEqual([11, 14]);
});

it.each([1, 4, 7, 59])('gives each of %i shifts the sum that its definition does', (shifts) => {
  const sound = whiteNoise(50, 1, 5);
  const heard = whiteNoise(50 + shifts, 1, 6);
  crossProducts(sound, heard, 50, shifts).forEach((product, shift) => {
    const sum = [...sound].reduce((total, x, i) => total + x * heard[i + shift]!, 0);
    expect(product).toBeCloseTo(sum, 10);
  });
});

import { expect, it } from 'vitest';
import { lagProducts } from '../../../src/core/signal/lag-products.ts';
import { whiteNoise } from '../../support/signals.ts';

it('sums products by hand', () => {
  const sums = new Float64Array(4);
  lagProducts(Float64Array.of(1, 2, 3, 4), 2, 4, 3, sums, 1);
  // 3·3 + 4·4, 3·2 + 4·3, 3·1 + 4·2.
  expect([...sums]).toEqual([0, 25, 18, 11]);
});

it('gives every lag the sum that its definition does, however many there are', () => {
  const noise = whiteNoise(120, 1, 3);
  for (const count of [1, 4, 9, 21]) {
    const sums = new Float64Array(count);
    lagProducts(noise, 30, 120, count, sums);
    sums.forEach((sum, lag) => {
      const products = Array.from({ length: 90 }, (_, i) => noise[30 + i]! * noise[30 + i - lag]!);
      expect(sum).toBeCloseTo(
        products.reduce((a, b) => a + b, 0),
        10,
      );
    });
  }
});

import { expect, it } from 'vitest';
import { finiteSource } from '../../../src/core/signal/finite-source.ts';
import { floatSource } from '../../support/float-source.ts';

it('finiteSource leaves samples as they are and puts silence where there are none', () => {
  const samples = Float32Array.of(0.5, Number.NaN, -1, Number.POSITIVE_INFINITY, -3e38, 32768, -0.25);
  const source = finiteSource(floatSource(48000, samples));
  expect([...source.read(0, -1, 8)]).toEqual([0, 0.5, 0, -1, 0, 0, 32768, -0.25, 0]);
});

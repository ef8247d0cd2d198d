import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { clickAlone } from '../../../src/core/click/click-alone.ts';

const rate = 24_000;

describe('clickAlone', () => {
  it('keeps what is surely there and leaves out what chance may have left', () => {
    const random = seeded('chance');
    const clean = Float32Array.from({ length: 9600 }, (_, n) =>
      n < 2400 ? Math.sin(0.3 * n) * Math.exp(-n / 400) : 0,
    );
    const noisy = clean.map((x) => x + 1e-3 * random.normal());
    const alone = clickAlone(noisy, new Float64Array(9600).fill(1e-6), rate);
    for (let n = 0; n < 1200; n++) expect(Math.abs(alone[n]! - clean[n]!)).toBeLessThan(0.02);
    expect(alone.subarray(4800).every((x) => x === 0)).toBe(true);
  });

  it('is nothing where all is chance', () => {
    const random = seeded('nothing');
    const noise = Float32Array.from({ length: 4800 }, () => 1e-3 * random.normal());
    const alone = clickAlone(noise, new Float64Array(4800).fill(1e-6), rate);
    const power = (samples: Float32Array) => samples.reduce((sum, x) => sum + x * x, 0);
    expect(power(alone)).toBeLessThan(0.05 * power(noise));
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { perSample, riseLikelihood, riseShape } from '../../../src/core/onsets/rise-likelihood.ts';

const rate = 48_000;
const shape = riseShape(rate, 0.005);

describe('riseShape', () => {
  it('rises from nothing to one and goes by time, not by samples', () => {
    expect(riseShape(rate, 0.001)).toHaveLength(48 * perSample);
    expect(shape[0]).toBe(0);
    for (let i = 1; i < shape.length; i++) expect(shape[i]).toBeGreaterThanOrEqual(shape[i - 1]!);
    expect(shape.at(-1)).toBeCloseTo(1, 6);
    expect(riseShape(2 * rate, 0.005)[2 * 80]).toBeCloseTo(shape[80]!, 12);
  });
});

describe('riseLikelihood', () => {
  it('is that of Gaussian samples under the variance asked for', () => {
    const power = [1, 2, 0.5, 40, 90, 200, 150];
    // Onset at 2.5 samples: four samples in the rise, 0.5, 1.5, 2.5 and 3.5 after it.
    const rise = [0.5, 1.5, 2.5, 3.5].map((t) => shape[t * perSample]!);
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    const gain = (sum(power.slice(3)) - 4) / sum(rise);
    const variances = [1, 1, 1, ...rise.map((value) => 1 + gain * value)];
    const logDensity = variances.map((v, i) => -0.5 * (Math.log(v) + power[i]! / v));
    expect(riseLikelihood(power, 1, 2.5, shape, 0, 7)).toBeCloseTo(sum(logDensity), 9);
  });

  it('is best where such a rise was made, on average of many', () => {
    const random = seeded(1);
    const at = 40.25;
    const total = new Float64Array(17);
    for (let trial = 0; trial < 200; trial++) {
      const power = Float64Array.from({ length: 100 }, (_, n) => {
        const t = Math.max(0, n - at) * perSample;
        return (1 + 400 * shape[Math.round(t)]!) * random.normal() ** 2;
      });
      total.forEach((_, i) => {
        total[i]! += riseLikelihood(power, 1, at + (i - 8) / 2, shape, 0, 100);
      });
    }
    expect(Math.abs(total.indexOf(Math.max(...total)) - 8)).toBeLessThanOrEqual(1);
  });

  it('takes steady noise for a rise of next to nothing', () => {
    const power = new Float64Array(60).fill(1);
    const none = -0.5 * 60;
    expect(riseLikelihood(power, 1, 30, shape, 0, 60)).toBeCloseTo(none, 2);
  });
});

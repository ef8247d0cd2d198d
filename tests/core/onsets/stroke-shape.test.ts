import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { beginsThere, bestMatch, learnShape } from '../../../src/core/onsets/stroke-shape.ts';
import { floatSource } from '../../support/float-source.ts';
import { power, whiteNoise } from '../../support/signals.ts';

const length = 360;
/** A stroke's start with the ringing predicted away: a burst of a few milliseconds. */
const burst = (decay: number) =>
  Float64Array.from({ length }, (_, i) => Math.exp(-i / decay) * Math.cos(0.9 * i));
const shapes = {
  'short burst': burst(6),
  'long burst': burst(40),
  'noise-like': Float64Array.from(whiteNoise(length, 1, 9)),
};
const energyOf = (samples: ArrayLike<number>) => power(samples) * samples.length;
const noiseOf = (count: number, seed: number, deviation = 1) =>
  Float64Array.from(whiteNoise(count, deviation, seed));

/** Log-density of independent normal samples of variance `variance` about `mean`. */
const logDensity = (samples: Float64Array, mean: (i: number) => number, variance: number) =>
  samples.reduce((sum, x, i) => sum - (x - mean(i)) ** 2 / (2 * variance), 0) -
  (samples.length / 2) * Math.log(2 * Math.PI * variance);

describe('bestMatch', () => {
  it('has the likelihood ratio of the best size against nothing, computed density by density', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const shape = shapes['long burst'];
      const energy = energyOf(shape);
      const samples = noiseOf(length + 1, seed).map((x, i) => x + 1.5 * (shape[i] ?? 0));
      const here = samples.subarray(0, length);
      // Less noise than is left, so that this is the variance of both hypotheses.
      const noise = 0.5;
      const { evidence, gain, index } = bestMatch({ samples, noise }, shape, energy, 0, 1);
      let best = Number.NEGATIVE_INFINITY;
      for (let size = 0; size < 4; size += 0.001) {
        best = Math.max(
          best,
          logDensity(here, (i) => size * shape[i]!, noise),
        );
      }
      expect(index).toBe(0);
      expect(evidence).toBeCloseTo(best - logDensity(here, () => 0, noise), 3);
      // The size fitted by least squares: no other leaves less.
      const left = (size: number) => here.reduce((sum, x, i) => sum + (x - size * shape[i]!) ** 2, 0);
      expect(left(gain)).toBeLessThan(Math.min(left(gain + 0.01), left(gain - 0.01)));
    }
  });

  it('takes what is left for the noise where that is less than there was before', () => {
    const shape = shapes['short burst'];
    const samples = noiseOf(length + 1, 8, 0.1).map((x, i) => x + (shape[i] ?? 0));
    const { gain, evidence } = bestMatch({ samples, noise: 1 }, shape, energyOf(shape), 0, 1);
    const left = samples.subarray(0, length).map((x, i) => x - gain * shape[i]!);
    expect(evidence).toBeCloseTo((gain ** 2 * energyOf(shape)) / (2 * power(left)), 6);
  });

  it('finds a shape in noise where it is, with its size', () => {
    for (const shape of Object.values(shapes)) {
      const samples = noiseOf(length + 400, 3, 0.1);
      shape.forEach((value, i) => {
        samples[137 + i]! += 2 * value;
      });
      const match = bestMatch({ samples, noise: 0.01 }, shape, energyOf(shape), 0, 300);
      expect(match.index).toBe(137);
      // A standard error of the size is 0.1/√energy.
      expect(Math.abs(match.gain - 2)).toBeLessThan(0.4 / Math.sqrt(energyOf(shape)));
    }
  });

  it('does not take a shape upside down, silence or an empty range for one', () => {
    const shape = shapes['short burst'];
    const upsideDown = Float64Array.from({ length: length + 1 }, (_, i) => -(shape[i] ?? 0));
    expect(bestMatch({ samples: upsideDown, noise: 1e-6 }, shape, energyOf(shape), 0, 1).evidence).toBe(0);
    const silence = new Float64Array(length + 20);
    expect(bestMatch({ samples: silence, noise: 1e-14 }, shape, energyOf(shape), 0, 20)).toEqual({
      index: 0,
      evidence: 0,
      gain: 0,
    });
    expect(bestMatch({ samples: silence, noise: 1 }, shape, 1, 5, 5).index).toBe(5);
  });

  // Of the fit's two signs one counts: twice the evidence of a place in noise exceeds 2x as often as half a χ² of one
  // degree of freedom, erfc(√x)/2 (values of erfc: Abramowitz & Stegun, table 7.1). A little more often, since what
  // is left of a good fit is less than the noise: up to a third at 2 nats.
  const erfc = { 1: 0.157299, 2: 0.0455 } as const;

  it.each(Object.entries(shapes))('of noise: the %s fits a place as often as chance has it', (_, shape) => {
    const noise = noiseOf(240_000, 3);
    const evidences: number[] = [];
    for (let at = 0; at + length + 1 < noise.length; at += 40) {
      const samples = noise.subarray(at, at + length + 1);
      evidences.push(bestMatch({ samples, noise: 1 }, shape, energyOf(shape), 0, 1).evidence);
    }
    for (const [threshold, tail] of Object.entries(erfc)) {
      const beyond = evidences.filter((evidence) => evidence > Number(threshold)).length / evidences.length;
      expect(beyond).toBeGreaterThan(0.4 * tail);
      expect(beyond).toBeLessThan(0.7 * tail);
    }
  });
});

describe('beginsThere', () => {
  const shape = shapes['long burst'];

  it('is told by whether the first samples are there as large as all of it', () => {
    const samples = noiseOf(length + 50, 4, 0.01);
    shape.forEach((value, i) => {
      samples[20 + i]! += value;
    });
    expect(beginsThere({ samples, noise: 1e-4 }, shape, 20, 1, 30)).toBe(true);
    const cut = samples.map((x, i) => (i < 50 ? 0.01 * Math.sin(i * i) : x));
    expect(beginsThere({ samples: cut, noise: 1e-4 }, shape, 20, 1, 30)).toBe(false);
  });

  it('gives the benefit of the doubt where noise hides the beginning', () => {
    const samples = noiseOf(length + 50, 4, 3);
    expect(beginsThere({ samples, noise: 9 }, shape, 20, 1, 2)).toBe(true);
  });
});

describe('learnShape', () => {
  const rate = 48_000;
  /** A stroke of a weak first wave and a strong one 3 ms later, at a place between the samples. */
  const addStroke = (into: Float32Array, time: number, size: number) => {
    const from = Math.ceil(time * rate);
    for (let n = from; n < from + 0.05 * rate; n++) {
      const t = n / rate - time;
      const wave = (since: number, hz: number, decay: number) =>
        since < 0 ? 0 : Math.exp(-since / decay) * Math.cos(2 * Math.PI * hz * since);
      into[n]! += size * (wave(t, 1500, 0.001) + 3 * wave(t - 0.003, 900, 0.002));
    }
  };
  const row = (count: number, noise: number, late: (i: number) => number) => {
    const samples = whiteNoise(rate * (1 + 0.2 * count), noise, 6);
    const random = seeded(2);
    const times = Array.from({ length: count }, (_, i) => 0.5 + 0.2 * i + 0.002 * random.uniform());
    for (const time of times) addStroke(samples, time, 0.05 * random.between(0.8, 1.2));
    return {
      samples,
      learned: learnShape(
        floatSource(rate, samples),
        times.map((time, i) => time + late(i)),
      ),
    };
  };

  it('has the first wave in it where half of the strokes were heard by the second', () => {
    const { learned } = row(24, 0.0005, (i) => (i % 2 === 0 ? 0 : 0.003));
    const { samples, energy } = learned!;
    expect(learned!.rate).toBe(12_000);
    expect(samples).toHaveLength(360);
    expect(energy).toBeCloseTo(energyOf(samples), 12);
    const strongest = samples.reduce((best, x, i) => (Math.abs(x) > Math.abs(samples[best]!) ? i : best), 0);
    expect(Math.abs(strongest / 12_000 - 0.003)).toBeLessThan(0.0004);
    // It begins with sound, not with the noise before.
    expect(samples[0]! ** 2).toBeGreaterThan(100 * 0.0005 ** 2);
  });

  it('sees a first wave that drowns in each stroke by itself', () => {
    const { learned } = row(48, 0.06, () => 0.001);
    // In the band 6 kHz wide a first wave's power is about that of the noise.
    const strongest = learned!.samples.reduce(
      (best, x, i) => (Math.abs(x) > Math.abs(learned!.samples[best]!) ? i : best),
      0,
    );
    expect(Math.abs(strongest / 12_000 - 0.003)).toBeLessThan(0.0005);
  });

  it('is nothing for too few strokes, for noise and for silence', () => {
    expect(row(5, 0.0005, () => 0).learned).toBeNull();
    const times = Array.from({ length: 24 }, (_, i) => 0.5 + 0.2 * i);
    expect(learnShape(floatSource(rate, new Float32Array(6 * rate)), times)).toBeNull();
    expect(learnShape(floatSource(rate, new Float32Array(6 * rate)), [])).toBeNull();
    const shapesOfNoise = [1, 2, 3, 4, 5, 6].map((seed) =>
      learnShape(floatSource(rate, whiteNoise(6 * rate, 0.1, seed)), times),
    );
    expect(shapesOfNoise.map((shape) => shape?.energy)).toEqual(times.slice(0, 6).map(() => undefined));
  });
});

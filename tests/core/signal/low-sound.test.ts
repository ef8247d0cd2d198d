import { describe, expect, it } from 'vitest';
import { freshAfter, lowSound, ringingSeconds } from '../../../src/core/signal/low-sound.ts';
import { floatSource } from '../../support/float-source.ts';
import { power, sine, toDb, whiteNoise } from '../../support/signals.ts';

const rates = [96_000, 48_000, 44_100, 22_050, 16_000];

/** Amplitude and phase (radians) of a sine of amplitude 1 as it is read, by correlation over whole Hann windows. */
function response(rate: number, hz: number): { gain: number; phase: number } {
  const { samples, start, rate: own } = lowSound(floatSource(rate, sine(rate / 2, rate, hz)), 0.1, 0.4);
  let [inPhase, quadrature] = [0, 0];
  samples.forEach((value, i) => {
    const weight = (1 - Math.cos((2 * Math.PI * i) / samples.length)) * value;
    const angle = 2 * Math.PI * hz * (start + i / own);
    inPhase += weight * Math.sin(angle);
    quadrature += weight * Math.cos(angle);
  });
  return {
    gain: (2 * Math.hypot(inPhase, quadrature)) / samples.length,
    phase: Math.atan2(quadrature, inPhase),
  };
}

/** How much later than it is sound round `hz` is read, s: the negative slope of the phase. */
function groupDelay(rate: number, hz: number): number {
  const turned = response(rate, hz + 10).phase - response(rate, hz - 10).phase;
  return -Math.atan2(Math.sin(turned), Math.cos(turned)) / (2 * Math.PI * 20);
}

describe('lowSound', () => {
  it.each([
    [192_000, 12_000],
    [96_000, 12_000],
    [48_000, 12_000],
    [44_100, 11_025],
    [32_000, 8000],
    [22_050, 11_025],
    [16_000, 8000],
    [15_999, 15_999],
    [8000, 8000],
    [6000, 6000],
  ])('reads %i Hz at %i Hz', (rate, own) => {
    const low = lowSound(floatSource(rate, new Float32Array(rate)), 0.2, 0.5);
    expect(low.rate).toBe(own);
    expect(low.samples).toHaveLength(Math.round(0.5 * own) - Math.round(0.2 * own));
  });

  it.each(rates)('passes %i Hz up to two fifths of its own rate', (rate) => {
    const { rate: own } = lowSound(floatSource(rate, new Float32Array(1)), 0, 0);
    for (const share of [0.01, 0.1, 0.25, 0.4])
      expect(Math.abs(2 * toDb(response(rate, share * own).gain)) / 2).toBeLessThan(0.05);
    // What would fold back below that is 70 dB down.
    expect(2 * toDb(response(rate, 0.61 * own).gain + 1e-9)).toBeLessThan(-65);
  });

  // An all-pass section (c + z⁻¹)/(1 + c·z⁻¹) delays the lowest frequencies by (1 − c)/(1 + c) of its own samples: for
  // the two chains of half-band.ts that is 1.29 samples of a halving's input. What is taken off is 1.9.
  it.each(rates)('is right in time to 0.05 ms at low frequencies, at %i Hz', (rate) => {
    const halvings = Math.log2(rate / lowSound(floatSource(rate, new Float32Array(1)), 0, 0).rate);
    const delayOf = (c: number) => (1 - c) / (1 + c);
    const even = 2 * (delayOf(0.07986642623635751) + delayOf(0.5453236510711322)) - 1;
    const odd = 2 * (delayOf(0.28382934487410993) + delayOf(0.8344118914807379));
    const theory = (((even + odd) / 2 - 1.9) * (2 ** halvings - 1)) / rate;
    expect(groupDelay(rate, 60)).toBeCloseTo(theory, 6);
    expect(Math.abs(groupDelay(rate, 60))).toBeLessThan(0.00005);
  });

  it.each(rates)('is right in time to 0.05 ms in the middle of its band, at %i Hz', (rate) => {
    const { rate: own } = lowSound(floatSource(rate, new Float32Array(1)), 0, 0);
    expect(Math.abs(groupDelay(rate, own / 4))).toBeLessThan(0.00005);
  });

  it.each(rates)('has an impulse within a sample of its own of where it is, at %i Hz', (rate) => {
    const errors = [0, 1, 2, 3, 4, 5, 6, 7].map((phase) => {
      const samples = new Float32Array(rate);
      const place = Math.round(0.5 * rate) + phase;
      samples[place] = 1;
      const low = lowSound(floatSource(rate, samples), 0.4, 0.6);
      const peak = low.samples.reduce(
        (best, value, i) => (Math.abs(value) > Math.abs(low.samples[best]!) ? i : best),
        0,
      );
      const error = low.start + peak / low.rate - place / rate;
      expect(Math.abs(error)).toBeLessThan(1 / low.rate);
      return error;
    });
    expect(Math.abs(errors.reduce((sum, error) => sum + error, 0) / errors.length)).toBeLessThan(0.00005);
  });

  it('reads the same sound wherever it begins to read', () => {
    const source = floatSource(48_000, whiteNoise(48_000, 0.1, 4));
    const [one, other] = [lowSound(source, 0.3, 0.6), lowSound(source, 0.4, 0.5)];
    const skip = Math.round((other.start - one.start) * one.rate);
    expect(other.start).toBeCloseTo(one.start + skip / one.rate, 9);
    other.samples.forEach((value, i) => {
      expect(Math.abs(value - one.samples[skip + i]!)).toBeLessThan(1e-5);
    });
  });

  it('reads silence over either end, and nothing where there is nothing to read', () => {
    const source = floatSource(48_000, whiteNoise(4800, 0.1, 4));
    const over = lowSound(source, -0.1, 0.3);
    expect(power(over.samples, 0, 1000)).toBe(0);
    expect(power(over.samples, 3000)).toBeLessThan(1e-12);
    expect(power(over.samples, 1300, 2300)).toBeGreaterThan(0.001);
    expect(lowSound(source, 0.05, 0.05).samples).toHaveLength(0);
  });
});

describe('freshAfter', () => {
  const rate = 12_000;
  const at = Math.round(0.5 * rate);
  const low = (samples: Float32Array) => ({ rate, start: 0, samples });
  /** Three vibrations that die away, and a little noise. */
  const ringing = (deviation: number) =>
    whiteNoise(rate, deviation, 5).map((noise, n) => {
      const t = n / rate;
      const heard = [180, 290, 415].map((hz, i) => Math.sin(2 * Math.PI * hz * t + i));
      return noise + 0.2 * Math.exp(-t / 0.4) * (heard[0]! + heard[1]! + heard[2]!);
    });

  it('predicts ringing away and leaves what is new', () => {
    const samples = ringing(1e-5);
    for (let i = 0; i < 60; i++) samples[at + 100 + i]! += 0.01 * Math.exp(-i / 12) * Math.cos(0.9 * i);
    const fresh = freshAfter(low(samples), at, 200);
    // 90 dB of ringing over the noise are gone but for a few.
    expect(toDb(power(fresh.samples, 0, 100) / power(samples, at, at + 100))).toBeLessThan(-55);
    expect(Math.abs(fresh.samples[100]! / 0.01 - 1)).toBeLessThan(0.1);
  });

  it('tells the power of noise, a little under it as forty coefficients are fitted to it', () => {
    for (const deviation of [1e-3, 0.1]) {
      const ratios = [1, 2, 3, 4, 5, 6].map(
        (seed) => freshAfter(low(whiteNoise(rate, deviation, seed)), at, 1).noise / deviation ** 2,
      );
      const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
      // 40 of the 720 samples of the past: 1 − 40/720 = 0.94.
      expect(mean).toBeGreaterThan(0.85);
      expect(mean).toBeLessThan(1.02);
    }
  });

  it('gives as many samples as are asked for', () => {
    const source = floatSource(48_000, whiteNoise(96_000, 0.1, 1));
    expect(freshAfter(lowSound(source, 0.9, 1.1), 1000, 200).samples).toHaveLength(200);
  });

  it('knows nothing of what comes after the place', () => {
    const samples = ringing(1e-3);
    const before = freshAfter(low(samples), at, 10);
    const changed = samples.map((value, n) => (n >= at + 10 ? 1 : value));
    expect(freshAfter(low(changed), at, 10)).toEqual(before);
  });

  it('needs no more than its own length of past, from the slowest rate on', () => {
    const slow = 8000;
    const place = Math.round(ringingSeconds * slow);
    const samples = whiteNoise(place + 50, 0.1, 2);
    const fresh = freshAfter({ rate: slow, start: 0, samples }, place, 50);
    expect(fresh.samples.every(Number.isFinite)).toBe(true);
    expect(Number.isFinite(fresh.noise)).toBe(true);
  });

  it('leaves silence silent', () => {
    const { samples, noise } = freshAfter(low(new Float32Array(rate)), at, 50);
    expect(power(samples)).toBe(0);
    expect(noise).toBeGreaterThan(0);
  });
});

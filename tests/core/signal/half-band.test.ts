import { describe, expect, it } from 'vitest';
import { halfBandState, splitHalfBand } from '../../../src/core/signal/half-band.ts';
import { power, sine, toDb, whiteNoise } from '../../support/signals.ts';

const length = 8192;
/** Past the filter's own start. */
const settled = 512;

/** Power of both halves for a sine of amplitude 1 at `share` of the sampling rate, per unit of its own. */
function gains(share: number): { low: number; high: number } {
  const low = new Float32Array(length / 2);
  const high = new Float32Array(length / 2);
  // Two phases a quarter apart: a sine that lands on frequency 0 has its power split between them.
  let [sumLow, sumHigh] = [0, 0];
  for (const phase of [0, Math.PI / 2]) {
    splitHalfBand(halfBandState(), sine(length, 1, share, 1, phase), length, low, high);
    sumLow += power(low, settled);
    sumHigh += power(high, settled);
  }
  return { low: sumLow, high: sumHigh };
}

/** Complete elliptic integral of the first kind by the arithmetic-geometric mean (Abramowitz & Stegun 17.6). */
function ellipticK(modulus: number): number {
  let [a, b] = [1, Math.sqrt(1 - modulus * modulus)];
  while (Math.abs(a - b) > 1e-15 * a) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.PI / (2 * a);
}

describe('the half-band split', () => {
  const shares = Array.from({ length: 49 }, (_, i) => (i + 1) / 100);

  it.each([0.01, 0.05, 0.1, 0.15, 0.2])('lets %f of the rate through below a quarter of it', (share) => {
    const { low, high } = gains(share);
    expect(Math.abs(toDb(low))).toBeLessThan(0.001);
    expect(toDb(high)).toBeLessThan(-70);
  });

  it.each([0.3, 0.35, 0.4, 0.45, 0.49])('lets %f of the rate through above a quarter of it', (share) => {
    const { low, high } = gains(share);
    expect(Math.abs(toDb(high))).toBeLessThan(0.001);
    expect(toDb(low)).toBeLessThan(-70);
  });

  it('is as sharp as a filter of its order can be', () => {
    // Degree equation of elliptic filters, N·K(k')/K(k) = K(k1')/K(k1), order 9, edges 0.2 and 0.3 of the rate; a
    // half-band one has pass and stop ripples that complement each other, so k1 = 10^(-attenuation/10).
    const k = Math.tan(0.2 * Math.PI) / Math.tan(0.3 * Math.PI);
    const wanted = (9 * ellipticK(Math.sqrt(1 - k * k))) / ellipticK(k);
    const ratio = (k1: number) => ellipticK(Math.sqrt(1 - k1 * k1)) / ellipticK(k1);
    let [weak, strong] = [1e-3, 1e-12];
    for (let i = 0; i < 100; i++) {
      const middle = Math.sqrt(weak * strong);
      if (ratio(middle) < wanted) weak = middle;
      else strong = middle;
    }
    const best = -toDb(weak);
    const reached = Math.min(
      ...shares.filter((share) => share >= 0.3).map((share) => -toDb(gains(share).low)),
    );
    expect(reached).toBeCloseTo(best, 1);
  });

  it('loses nothing: the two halves have the power of the whole', () => {
    for (const share of shares) {
      const { low, high } = gains(share);
      expect(low + high).toBeCloseTo(1, 5);
    }
    const noise = whiteNoise(1 << 16, 1, 1);
    const low = new Float32Array(1 << 15);
    const high = new Float32Array(1 << 15);
    splitHalfBand(halfBandState(), noise, noise.length, low, high);
    // All-pass chains keep the energy of every input sample but what still rings at the end.
    expect((power(low) + power(high)) / power(noise)).toBeCloseTo(1, 3);
  });

  it('gives nothing before an attack', () => {
    const attack = new Float32Array(256);
    attack[100] = 1;
    const low = new Float32Array(128);
    const high = new Float32Array(128);
    splitHalfBand(halfBandState(), attack, 256, low, high);
    expect(low.subarray(0, 50)).toEqual(new Float32Array(50));
    expect(high.subarray(0, 50)).toEqual(new Float32Array(50));
    expect(Math.abs(low[50]!)).toBeGreaterThan(0);
  });

  it('goes on where the block before ended, and may write over its input', () => {
    const noise = whiteNoise(2000, 0.3, 2);
    const whole = new Float32Array(1000);
    const wholeHigh = new Float32Array(1000);
    splitHalfBand(halfBandState(), noise, 2000, whole, wholeHigh);
    const state = halfBandState();
    const parts: number[] = [];
    for (const [from, to] of [
      [0, 602],
      [602, 604],
      [604, 2000],
    ] as const) {
      const block = noise.slice(from, to);
      splitHalfBand(state, block, to - from, block, null);
      parts.push(...block.subarray(0, (to - from) / 2));
    }
    expect(Float32Array.from(parts)).toEqual(whole);
  });
});

import { describe, expect, it } from 'vitest';
import { applyHighPass, highPass } from '../../../src/core/signal/high-pass.ts';
import { whiteNoise } from '../../support/signals.ts';

/** Power gain at `hz` from the response to an impulse. */
function gainAt(cutoff: number, rate: number, hz: number): number {
  const response = new Float32Array(1 << 15);
  response[0] = 1;
  applyHighPass(highPass(cutoff, rate), response, response.length);
  let [re, im] = [0, 0];
  response.forEach((value, n) => {
    re += value * Math.cos((2 * Math.PI * hz * n) / rate);
    im -= value * Math.sin((2 * Math.PI * hz * n) / rate);
  });
  return re * re + im * im;
}

describe('the high-pass', () => {
  it.each([
    [70, 3000],
    [150, 6000],
    [150, 5512.5],
    [70, 2000],
  ])('follows the analogue Butterworth curve: %f Hz at %f Hz', (cutoff, rate) => {
    for (const share of [0.02, 0.1, 0.5, 1, 2, 5]) {
      const hz = share * cutoff;
      // |H|² = Ω⁴ / (1 + Ω⁴), Ω the frequency ratio as the bilinear transform warps it (Oppenheim & Schafer,
      // Discrete-Time Signal Processing, ch. 7, quoted from memory).
      const omega = Math.tan((Math.PI * hz) / rate) / Math.tan((Math.PI * cutoff) / rate);
      expect(gainAt(cutoff, rate, hz)).toBeCloseTo(omega ** 4 / (1 + omega ** 4), 4);
    }
  });

  it('takes half the power at its cutoff, as every Butterworth filter does', () => {
    expect(10 * Math.log10(gainAt(70, 3000, 70))).toBeCloseTo(-3.0103, 2);
  });

  it('lets nothing of a steady level through', () => {
    const steady = new Float32Array(6000).fill(0.7);
    applyHighPass(highPass(70, 3000), steady, 6000);
    expect(Math.abs(steady.at(-1)!)).toBeLessThan(1e-6);
  });

  it('goes on where the block before ended, and leaves what lies past `count` alone', () => {
    const whole = whiteNoise(900, 0.5, 1);
    const [first, second] = [whole.slice(0, 400), whole.slice(400)];
    const filter = highPass(70, 3000);
    const last = second.at(-1);
    applyHighPass(filter, first, 400);
    applyHighPass(filter, second, 499);
    applyHighPass(highPass(70, 3000), whole, 900);
    expect(first).toEqual(whole.slice(0, 400));
    expect(second.slice(0, 499)).toEqual(whole.slice(400, 899));
    expect(second.at(-1)).toBe(last);
  });
});

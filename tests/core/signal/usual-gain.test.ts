import { describe, expect, it } from 'vitest';
import { atUsualGain } from '../../../src/core/signal/usual-gain.ts';
import { floatSource } from '../../support/float-source.ts';

const rate = 48_000;
const sine = (peak: number) =>
  Float32Array.from({ length: rate }, (_, i) => peak * Math.sin((2 * Math.PI * 440 * i) / rate));

describe('atUsualGain', () => {
  it('raises a recording 40 dB under the usual by 40 dB', () => {
    const { source, gainDb } = atUsualGain(floatSource(rate, sine(0.00316)));
    expect(gainDb).toBeCloseTo(40, 2);
    expect(Math.max(...source.read(0, 0, rate))).toBeCloseTo(0.316, 4);
  });

  it('lowers what is louder', () => {
    expect(atUsualGain(floatSource(rate, sine(1))).gainDb).toBeCloseTo(20 * Math.log10(0.316), 2);
  });

  it('leaves silence and nothing as they are', () => {
    expect(atUsualGain(floatSource(rate, new Float32Array(rate))).gainDb).toBe(0);
    expect(atUsualGain(floatSource(rate, new Float32Array(0))).gainDb).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { bandSplit } from '../../../src/core/signal/band-frames.ts';
import { bandLayout } from '../../../src/core/signal/band-layout.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { bandFrames } from '../../support/band-frames.ts';
import { floatSource } from '../../support/float-source.ts';
import { sine, toDb, whiteNoise } from '../../support/signals.ts';

/** Power and innovation of every band over the whole recording. */
function allFrames(source: Source): { power: number[][]; fresh: number[][] } {
  const bands = bandLayout(source.sampleRate).bands.length;
  const power = Array.from({ length: bands }, (): number[] => []);
  const fresh = Array.from({ length: bands }, (): number[] => []);
  for (const block of bandFrames(source)) {
    for (let band = 0; band < bands; band++) {
      expect(block.fresh[band]).toHaveLength(block.power[0]!.length);
      expect(block.power[band]).toHaveLength(block.power[0]!.length);
      power[band]!.push(...block.power[band]!);
      fresh[band]!.push(...block.fresh[band]!);
    }
  }
  return { power, fresh };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('bandSplit', () => {
  const rates = [8000, 16_000, 22_050, 44_100, 48_000, 96_000, 192_000];
  const cases = rates.flatMap((rate) =>
    bandLayout(rate).bands.map(({ lowHz, highHz }, band) => ({ rate, band, hz: (lowHz + highHz) / 2 })),
  );

  it.each(cases)('hears a sine of $hz Hz at $rate Hz in band $band with its power', ({ rate, band, hz }) => {
    const { power } = allFrames(floatSource(rate, sine(rate / 4, rate, hz, 0.5)));
    const settled = power.map((values) => mean(values.slice(50, -5)));
    expect(settled[band]! / (0.5 * 0.5 ** 2)).toBeCloseTo(1, 1);
    settled.forEach((value, other) => {
      if (other !== band) expect(toDb(value / settled[band]!)).toBeLessThan(-60);
    });
  });

  it('shares all the power among its bands but the rumble', () => {
    const noise = whiteNoise(48_000, 0.1, 1);
    const { power } = allFrames(floatSource(48_000, noise));
    // Each band's power is that of its share of the width: an octave's half, a quarter …
    const widths = bandLayout(48_000).bands.map(({ lowHz, highHz }) => (highHz - lowHz) / 24_000);
    power.forEach((values, band) => {
      expect(toDb(mean(values) / (0.01 * widths[band]!))).toBeCloseTo(0, 0);
    });
    expect(toDb(power.reduce((sum, values) => sum + mean(values), 0) / 0.01)).toBeCloseTo(0, 1);
  });

  it('is deaf to rumble and to a steady level', () => {
    const rumble = sine(48_000, 48_000, 15, 0.4).map((value) => value + 0.3);
    const { power } = allFrames(floatSource(48_000, rumble));
    for (const values of power) expect(mean(values.slice(100, 900))).toBeLessThan(0.01 * 0.08);
  });

  it('puts an attack into its frame, and nothing before it', () => {
    const click = new Float32Array(48_000);
    click[24_000] = 0.5;
    const { power } = allFrames(floatSource(48_000, click));
    const frame = Math.floor(24_000 / bandLayout(48_000).hop);
    for (const values of power) {
      expect(Math.max(...values.slice(0, frame))).toBe(0);
      expect(values[frame]! + values[frame + 1]!).toBeGreaterThan(1e-6);
    }
  });

  it('never has more that is fresh than there is, and the upper bands all of it', () => {
    const tail = sine(48_000, 48_000, 200, 0.3).map((value, n) => value * Math.exp(-n / 12_000));
    const { power, fresh } = allFrames(floatSource(48_000, tail));
    for (let band = 0; band < power.length; band++) {
      if (band < power.length - 2) expect(fresh[band]).toEqual(power[band]);
      fresh[band]!.forEach((value, frame) => {
        expect(value).toBeLessThanOrEqual(power[band]![frame]!);
      });
    }
    const from = 100;
    expect(toDb(mean(fresh.at(-1)!.slice(from)) / mean(power.at(-1)!.slice(from)))).toBeLessThan(-15);
  });

  it('has no frames of an empty recording, and one of a single sample', () => {
    expect(allFrames(floatSource(48_000, new Float32Array(0))).power[0]).toEqual([]);
    expect(allFrames(floatSource(48_000, new Float32Array(1))).power[0]).toHaveLength(1);
  });

  it('splits ten frames of 48 samples as in the example', () => {
    expect(bandSplit(48_000).next(new Float32Array(480)).power[0]).toHaveLength(10);
  });
});

import { describe, expect, it } from 'vitest';
import { bandLayout } from '../../../src/core/signal/band-layout.ts';
import { floatSource, formulaSource, watchedSource } from '../../support/float-source.ts';
import { strokesInNoise } from '../../support/made-strokes.ts';
import { riseCandidates } from '../../support/rise-candidates.ts';
import { toDb, whiteNoise } from '../../support/signals.ts';

/** What `hearStrokes` asks of a stroke, nats. */
const enough = 12;
const rate = 48_000;

describe('riseCandidates', () => {
  it.each([
    ['quiet', 0.0001],
    ['loud', 0.1],
  ])('finds nothing worth a stroke in half a minute of %s noise', (_, deviation) => {
    for (const sampleRate of [16_000, 48_000]) {
      const { rises } = riseCandidates(floatSource(sampleRate, whiteNoise(15 * sampleRate, deviation, 1)));
      expect(Math.max(0, ...rises.map(({ evidence }) => evidence))).toBeLessThan(enough);
      expect(rises.length).toBeLessThan(45);
    }
  });

  it.each([8000, 16_000, 22_050, 44_100, 48_000, 96_000])(
    'finds strokes in their frames at %i Hz',
    (sampleRate) => {
      const times = [0.31234, 0.52, 0.70011, 0.9, 1.2051];
      const strokes = times.map((time, i) => ({ time, levelDb: -12 - 5 * i, seed: i }));
      const { rises } = riseCandidates(floatSource(sampleRate, strokesInNoise(1.6, sampleRate, strokes)));
      const strong = rises.filter(({ evidence }) => evidence > enough);
      const { frameRate } = bandLayout(sampleRate);
      expect(strong).toHaveLength(times.length);
      strong.forEach(({ frame }, i) => {
        // Causal filters are late by up to two frames, and a frame is rounded down.
        expect(Math.abs((frame + 0.5) / frameRate - times[i]!)).toBeLessThan(2.5 / frameRate);
      });
    },
  );

  it('tells what there was before, at the attack, after it', () => {
    const samples = strokesInNoise(1, rate, [{ time: 0.5, levelDb: -10, seed: 1 }], -60);
    const { rises } = riseCandidates(floatSource(rate, samples));
    const { before, attack, body, after } = rises.find((rise) => rise.evidence > enough)!;
    const total = (powers: readonly number[]) => powers.reduce((sum, value) => sum + value, 0);
    expect(toDb(total(before))).toBeCloseTo(-60, -1);
    expect(toDb(total(attack) / total(before))).toBeGreaterThan(25);
    expect(total(body)).toBeGreaterThan(10 * total(before));
    expect(total(after)).toBeLessThan(0.1 * total(body));
  });

  it('finds the same wherever the blocks of the analysis end', () => {
    // A block is 4096 frames of 48 samples: about 4.096 s. The stroke goes through its end in steps of 2 ms.
    const found = Array.from({ length: 41 }, (_, i) => {
      const time = 4.05 + 0.002 * i;
      const samples = strokesInNoise(4.4, rate, [{ time, levelDb: -20, seed: 7 }], -90);
      const { rises } = riseCandidates(floatSource(rate, samples));
      const strong = rises.filter(({ evidence }) => evidence > enough);
      expect(strong).toHaveLength(1);
      expect(Math.abs(strong[0]!.frame / 1000 - time)).toBeLessThan(0.003);
      return strong[0]!.evidence;
    });
    expect(Math.max(...found) / Math.min(...found)).toBeLessThan(1.35);
  });

  it('hears no attack in a recording that starts in a steady sound, but for its first milliseconds', () => {
    const hum = (n: number) => 0.2 * Math.cos((2 * Math.PI * 300 * n) / rate);
    for (const value of [hum, () => 0, () => 0.5]) {
      const { rises } = riseCandidates(formulaSource(rate, rate, value));
      expect(rises.filter(({ frame, evidence }) => frame > 11 && evidence > enough)).toEqual([]);
    }
  });

  it('knows the noise between the strokes', () => {
    const strokes = Array.from({ length: 20 }, (_, i) => ({ time: 0.2 + 0.2 * i, levelDb: -8, seed: i }));
    const { floorPower } = riseCandidates(floatSource(rate, strokesInNoise(4.5, rate, strokes, -55)));
    // The quietest tenth of frames lies a little under the mean.
    expect(toDb(floorPower)).toBeGreaterThan(-57);
    expect(toDb(floorPower)).toBeLessThan(-54);
    expect(riseCandidates(floatSource(rate, new Float32Array(rate))).floorPower).toBeLessThan(1e-9);
  });

  it('never reads more than some seconds at a time', () => {
    const value = (n: number) => 0.01 * Math.sin(n * n);
    const { source, longestRead } = watchedSource(formulaSource(16_000, 40 * 16_000, value));
    riseCandidates(source);
    expect(longestRead()).toBeLessThan(6 * 16_000);
  });

  it('finds nothing in nothing', () => {
    for (const length of [0, 1, 100]) {
      expect(riseCandidates(floatSource(rate, new Float32Array(length))).rises).toEqual([]);
    }
  });
});

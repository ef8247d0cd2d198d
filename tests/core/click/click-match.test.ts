import { describe, expect, it } from 'vitest';
import { clickSound } from '../../../fixtures/generator/click-sound.ts';
import { leftOver, matchClick, matchSeconds } from '../../../src/core/click/click-match.ts';
import { readAt } from '../../../src/core/signal/fractional-read.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const sound = Float32Array.from(clickSound('woodblock', false, -12, 0, rate).samples);

/** A second of noise with the click at `place` (samples), `gain` times as loud. */
function recording(place: number, gain = 1, noise = 1e-4) {
  const samples = whiteNoise(rate, noise, 1);
  const base = Math.floor(place);
  clickSound('woodblock', false, -12, place - base, rate).samples.forEach((value, n) => {
    samples[base + n]! += gain * value;
  });
  return floatSource(rate, samples);
}

describe('matchClick', () => {
  it.each([20_000, 20_000.2, 20_000.5, 20_000.83])('finds a click at sample %f', (place) => {
    const { time, correlation, gain } = matchClick(recording(place), sound, 20_003 / rate, 0.0005);
    expect(Math.abs(time - place / rate)).toBeLessThan(2e-6);
    expect(correlation).toBeGreaterThan(0.995);
    expect(gain).toBeCloseTo(1, 2);
  });

  it.each([0.25, 1.7])('says how loud it is: %f times', (louder) => {
    expect(matchClick(recording(9000, louder), sound, 9000 / rate, 0.0005).gain).toBeCloseTo(louder, 2);
  });

  it('correlates with nothing where there is none', () => {
    for (const time of [0.1, 0.3, 0.7]) {
      expect(matchClick(recording(20_000, 1, 0.01), sound, time, 0.0005).correlation).toBeLessThan(0.35);
    }
    const { correlation, gain } = matchClick(floatSource(rate, new Float32Array(rate)), sound, 0.5, 0.0005);
    expect(correlation).toBeCloseTo(0, 6);
    expect(gain).toBeCloseTo(0, 6);
  });

  it('knows the click with its sign turned for none of its own', () => {
    expect(matchClick(recording(9000, -1), sound, 9000 / rate, 0.0001).correlation).toBeLessThan(0.5);
  });

  it('places the peak of a parabola as the formula does', () => {
    // p = ½(α − γ)/(α − 2β + γ) (J. O. Smith, Spectral Audio Signal Processing, peak interpolation): a sound whose
    // products with the recording one sample before, at and after its place are 0.7, 1 and 0.9 peaks 0.25 later.
    const unit = new Float32Array(Math.round(matchSeconds * rate));
    unit[100] = 1;
    const samples = new Float32Array(4800);
    samples.set([0.7, 1, 0.9], 2099);
    const { time, gain } = matchClick(floatSource(rate, samples), unit, 2000 / rate, 1.5 / rate);
    expect(time * rate).toBeCloseTo(2000.25, 6);
    expect(gain).toBeCloseTo(1.0125, 6);
  });
});

/** What is left of the power of `sound` when it is taken off `source` at `time`. */
const leftAt = (source: Source, time: number) =>
  leftOver(readAt(source, time, Math.round(matchSeconds * rate)), sound, rate);

describe('leftOver', () => {
  it('is next to nothing where the click lies, and one where nothing does', () => {
    expect(leftAt(recording(9000), 9000 / rate)).toBeLessThan(0.001);
    expect(leftAt(floatSource(rate, new Float32Array(rate)), 0.5)).toBeCloseTo(1, 6);
  });

  it("is told from the click's start when a stroke covers the rest", () => {
    const struck = recording(9000).read(0, 0, rate);
    const burst = whiteNoise(2000, 0.5, 3);
    burst.forEach((value, n) => {
      struck[9000 + Math.round(0.0025 * rate) + n]! += value;
    });
    expect(leftAt(floatSource(rate, struck), 9000 / rate)).toBeLessThan(0.01);
  });

  it('grows with every part of a sample that the time is off', () => {
    const source = recording(9000);
    const off = [0, 0.5, 1, 2, 4].map((samples) => leftAt(source, (9000 + samples) / rate));
    for (let i = 1; i < off.length; i++) expect(off[i]).toBeGreaterThan(off[i - 1]!);
  });
});

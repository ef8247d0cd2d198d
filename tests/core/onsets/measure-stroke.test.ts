import { describe, expect, it } from 'vitest';
import { measureStroke } from '../../../src/core/onsets/measure-stroke.ts';
import { bandLayout } from '../../../src/core/signal/band-layout.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { floatSource } from '../../support/float-source.ts';
import { type MadeStroke, strokesInNoise } from '../../support/made-strokes.ts';
import { riseCandidates } from '../../support/rise-candidates.ts';

const never = Number.NEGATIVE_INFINITY;
const alone = Number.POSITIVE_INFINITY;

function strongest(source: Source) {
  const { rises } = riseCandidates(source);
  return rises.toSorted((a, b) => b.evidence - a.evidence)[0]!;
}

function measured(stroke: MadeStroke, rate = 48_000, noiseDb = -85) {
  const source = floatSource(rate, strokesInNoise(1, rate, [stroke], noiseDb));
  const rise = strongest(source);
  return measureStroke(source, rise, rise.frame / bandLayout(rate).frameRate, never, alone);
}

describe('measureStroke', () => {
  it.each([16_000, 44_100, 48_000, 96_000])('finds time and level of a stroke at %i Hz', (rate) => {
    for (let seed = 1; seed <= 10; seed++) {
      const time = 0.5 + seed * 0.00123;
      const stroke = measured({ time, levelDb: -14, seed }, rate);
      expect(Math.abs(stroke.time - time)).toBeLessThan(rate < 40_000 ? 0.00006 : 0.00004);
      expect(stroke.timeSe).toBeLessThan(0.00005);
      // Power of the first milliseconds as that of a sine: some decibels under the peak.
      expect(stroke.levelDb).toBeLessThan(-14);
      expect(stroke.levelDb).toBeGreaterThan(-24);
      expect(stroke.sound).toBe('pad');
      expect(stroke.evidence).toBeGreaterThan(100);
      expect(stroke.timbre!.values).toHaveLength(2 * bandLayout(rate).bands.length + 2);
    }
  });

  it('finds the same level for the same stroke wherever it is among the samples and in the recording', () => {
    const levels = [0.4, 0.4 + 0.3 / 48_000, 0.51, 0.6000057].map(
      (time) => measured({ time, levelDb: -14, seed: 3 }).levelDb,
    );
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.6);
  });

  it('steps by six decibels with the stroke', () => {
    const level = (levelDb: number) => measured({ time: 0.5, levelDb, seed: 5 }, 48_000, -120).levelDb;
    expect(level(-8) - level(-14)).toBeCloseTo(6, 1);
    expect(level(-26) - level(-14)).toBeCloseTo(-12, 1);
  });

  it('does not claim to know a level to hundredths of a decibel', () => {
    expect(measured({ time: 0.5, levelDb: -6, seed: 2 }).levelSe).toBeGreaterThanOrEqual(0.02);
  });

  it('marks what it cannot know of a stroke soon followed by another', () => {
    const source = floatSource(
      48_000,
      strokesInNoise(1, 48_000, [{ time: 0.5, levelDb: -14, seed: 2 }], -85),
    );
    const rise = strongest(source);
    expect(measureStroke(source, rise, 0.5, never, 5).timbre!.cut).toBe(true);
    expect(measureStroke(source, rise, 0.5, never, alone).timbre!.cut).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import type { KindName } from '../../../fixtures/generator/stroke-kinds.ts';
import { levelPastSeconds, levelSeconds, strokeLevel } from '../../../src/core/onsets/stroke-level.ts';
import { median } from '../../../src/core/stats/median.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { type MadeStroke, strokesInNoise } from '../../support/made-strokes.ts';
import { sine } from '../../support/signals.ts';

/** Onset of the stroke measured, s; strokes before it are earlier than this. */
const onset = 0.3;
const attackSeconds = 0.008;

/** Level of the stroke at `onset`, with what is known of the one before it. */
function levelOf(samples: Float32Array, rate: number, previous = Number.NEGATIVE_INFINITY) {
  const from = Math.round((onset - levelPastSeconds) * rate);
  const to = Math.round((onset + levelSeconds + 0.004) * rate);
  const pastFrom = Math.max(0, (previous + attackSeconds) * rate - from);
  return strokeLevel(samples.slice(from, to), rate, onset * rate - from, pastFrom);
}

/** Error of a stroke's level against the same stroke alone in silence, dB, with the error told. */
function errorOf(
  stroke: Omit<MadeStroke, 'time'>,
  before: MadeStroke | null,
  noiseDb: number,
  rate = 48_000,
) {
  const own = { ...stroke, time: onset };
  const all = before === null ? [own] : [before, own];
  const heard = levelOf(strokesInNoise(0.4, rate, all, noiseDb, stroke.seed), rate, before?.time);
  return {
    error: heard.levelDb - levelOf(strokesInNoise(0.4, rate, [own], -200), rate).levelDb,
    se: heard.levelSe,
  };
}

const seeds = Array.from({ length: 50 }, (_, i) => 8100 + i);

describe('strokeLevel', () => {
  it('steps with the gain, exactly', () => {
    const samples = strokesInNoise(0.4, 48_000, [{ time: onset, levelDb: -20, seed: 1 }], -90);
    const { levelDb } = levelOf(samples, 48_000);
    for (const step of [-40, -6, 6, 12]) {
      const louder = samples.map((value) => value * 10 ** (step / 20));
      expect(levelOf(louder, 48_000).levelDb - levelDb).toBeCloseTo(step, 3);
    }
    const reversed = samples.map((value) => -value);
    expect(levelOf(reversed, 48_000).levelDb).toBeCloseTo(levelDb, 6);
  });

  it('is that of a sine for a tone that begins at the onset', () => {
    for (const hz of [500, 1000, 2000]) {
      const tone = sine(0.4 * 48_000, 48_000, hz, 0.1).map((value, n) => (n < onset * 48_000 ? 0 : value));
      expect(Math.abs(levelOf(tone, 48_000).levelDb + 20)).toBeLessThan(0.7);
    }
  });

  it.each([16_000, 22_050, 44_100, 96_000, 192_000])('is the same at %i Hz as at 48 kHz', (rate) => {
    const differences = seeds.slice(0, 20).map((seed) => {
      // Without noise bursts, which no two rates render alike.
      const stroke: MadeStroke = { time: onset, levelDb: -12, kind: 'wires-off', seed };
      const of = (at: number) => levelOf(strokesInNoise(0.4, at, [stroke], -200), at).levelDb;
      return of(rate) - of(48_000);
    });
    expect(Math.abs(median(differences))).toBeLessThan(0.6);
    expect(quantile(differences, 0.9) - quantile(differences, 0.1)).toBeLessThan(2);
  });

  it.each<[KindName, number, number]>([
    ['snare', 0.4, 0.14],
    ['long-wire-snare', 1, 0.12],
    ['mesh', 0.4, 0.12],
    ['rubber-pad', 0.4, 0.1],
    ['wires-off', 2, 0.12],
    ['high-tom', 3, 0.12],
  ])('takes the ringing of a %s off: a tap 16 dB under the accent before it', (kind, limit, apart) => {
    const errors = seeds.map((seed) => {
      const accent: MadeStroke = { time: onset - apart, levelDb: -10, kind, seed: seed + 500 };
      return errorOf({ levelDb: -26, softDb: 16, kind, seed }, accent, -80).error;
    });
    expect(Math.abs(median(errors))).toBeLessThan(0.25);
    expect(quantile(errors.map(Math.abs), 0.9)).toBeLessThan(limit);
  });

  it('would be decibels off if it did not: the ringing is as loud as the tap', () => {
    const errors = seeds.map((seed) => {
      const accent: MadeStroke = { time: onset - 0.1, levelDb: -10, kind: 'wires-off', seed: seed + 500 };
      const tap: MadeStroke = { time: onset, levelDb: -30, kind: 'wires-off', softDb: 20, seed };
      const alone = levelOf(strokesInNoise(0.4, 48_000, [tap], -200), 48_000).levelDb;
      const samples = strokesInNoise(0.4, 48_000, [accent, tap], -80);
      // Told that the accent has only just been struck, it knows no past to take off.
      const bare = levelOf(samples, 48_000, onset - attackSeconds - 0.001).levelDb - alone;
      return { bare, taken: levelOf(samples, 48_000, onset - 0.1).levelDb - alone };
    });
    const typical = (values: readonly number[]) => median(values.map(Math.abs));
    expect(typical(errors.map(({ bare }) => bare))).toBeGreaterThan(
      4 * typical(errors.map(({ taken }) => taken)),
    );
  });

  it('takes noise off, so that soft strokes are not made louder', () => {
    // The power of −50 dBFS noise in the band is about a fifth of the tap's.
    const errors = seeds.map((seed) => errorOf({ levelDb: -34, softDb: 20, seed }, null, -50).error);
    expect(Math.abs(median(errors))).toBeLessThan(0.3);
  });

  it.each([-60, -50, -45])('tells its own error in noise of %i dBFS', (noiseDb) => {
    const found = seeds.map((seed) => errorOf({ levelDb: -30, softDb: 18, seed }, null, noiseDb));
    const normalised = Math.hypot(...found.map(({ error, se }) => error / se)) / Math.sqrt(found.length);
    expect(normalised).toBeGreaterThan(0.5);
    expect(normalised).toBeLessThan(2);
  });

  it('gives numbers in silence and for a drowned stroke', () => {
    for (const noiseDb of [-200, -20]) {
      const { levelDb, levelSe } = levelOf(strokesInNoise(0.4, 48_000, [], noiseDb), 48_000);
      expect(Number.isFinite(levelDb)).toBe(true);
      expect(levelSe).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(levelSe)).toBe(true);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import type { KindName } from '../../../fixtures/generator/stroke-kinds.ts';
import { pastSeconds, refineOnset } from '../../../src/core/onsets/refine-onset.ts';
import { median } from '../../../src/core/stats/median.ts';
import { quantile } from '../../../src/core/stats/quantile.ts';
import { type MadeStroke, strokesInNoise } from '../../support/made-strokes.ts';
import { whiteNoise } from '../../support/signals.ts';

const window = 0.04;
const middle = 0.028;

/** Error of the onset found, s, for a stroke somewhere between two samples, looked for up to 2 ms off. */
function errorOf(stroke: Omit<MadeStroke, 'time'>, rate = 48_000, noiseDb = -80) {
  const random = seeded(`place ${stroke.seed}`);
  const time = middle + random.uniform() / rate;
  const coarse = time + random.between(-0.002, 0.002);
  const samples = strokesInNoise(window, rate, [{ ...stroke, time }], noiseDb, stroke.seed);
  const found = refineOnset(samples, rate, coarse * rate);
  return { ...found, error: found.time - time };
}

const seeds = Array.from({ length: 60 }, (_, i) => 9000 + i);
const errorsOf = (stroke: Omit<MadeStroke, 'time' | 'seed'>, rate = 48_000, noiseDb = -80) =>
  seeds.map((seed) => errorOf({ ...stroke, seed }, rate, noiseDb).error);

describe('refineOnset', () => {
  const kinds: [KindName, number][] = [
    ['rubber-pad', 0.00004],
    ['laminate-pad', 0.00003],
    ['rim', 0.00003],
    ['snare', 0.00004],
    ['mesh', 0.00008],
    ['soft-pad', 0.00012],
    ['pillow', 0.0002],
  ];

  it.each(kinds)('finds the start of a stroke on a %s between the samples', (kind, p95) => {
    const errors = errorsOf({ levelDb: -12, kind });
    expect(Math.abs(median(errors))).toBeLessThan(p95 / 2);
    expect(quantile(errors.map(Math.abs), 0.95)).toBeLessThan(p95);
  });

  it.each([8000, 16_000, 44_100, 96_000, 192_000])('does so at %i Hz, to a part of a sample', (rate) => {
    const errors = errorsOf({ levelDb: -12 }, rate);
    expect(quantile(errors.map(Math.abs), 0.9)).toBeLessThan(Math.max(0.000025, 0.6 / rate));
  });

  it.each<[KindName, number]>([
    ['rubber-pad', 12],
    ['rubber-pad', 24],
    ['laminate-pad', 18],
    ['rim', 18],
  ])('reads soft strokes on a %s neither later nor earlier than loud ones (%i dB)', (kind, under) => {
    const loud = errorsOf({ levelDb: -8, kind });
    const soft = errorsOf({ levelDb: -8 - under, softDb: under, kind });
    expect(Math.abs(median(loud) - median(soft))).toBeLessThan(0.00002);
  });

  it('does not walk with the level as a threshold would', () => {
    // An edge of rise time 2 ms crosses a tenth of full scale 0.2 ms late at 0 dB and 1.6 ms late at −18 dB.
    const edge = (gain: number) =>
      whiteNoise(Math.round(window * 48_000), 1e-5, 5).map((value, n) => {
        const t = n / 48_000 - middle;
        const tone = Math.sin(2 * Math.PI * 1500 * t + 1);
        return value + (t < 0 ? 0 : gain * Math.min(1, t / 0.002) * tone);
      });
    const at = [1, 0.5, 0.25, 0.125].map(
      (gain) => refineOnset(edge(0.5 * gain), 48_000, middle * 48_000).time,
    );
    for (const time of at) expect(Math.abs(time - at[0]!)).toBeLessThan(0.00003);
  });

  it("finds the change that Akaike's criterion finds", () => {
    // Twenty samples whose AIC (Maeda 1985, as in ObsPy's aic_simple) is least at index 9: the first sample of the
    // signal is number 10. The noise before them is put on in front.
    const noise = [0.1, -0.2, 0.15, -0.1, 0.05, -0.15, 0.2, -0.05, 0.1, -0.1];
    const signal = [3, -2.5, 2, -1.8, 1.5, -1.2, 1, -0.8, 0.6, -0.5];
    const random = seeded(3);
    const samples = Float32Array.from({ length: 2000 }, () => random.pick(noise));
    samples.set([...noise, ...signal], 1000);
    // At 8 kHz the ten samples of the signal last as long as an attack.
    const { time } = refineOnset(samples, 8000, 1015);
    expect(time * 8000).toBeGreaterThan(1008.5);
    expect(time * 8000).toBeLessThan(1010);
  });

  it('comes out the same however loud, and upside down', () => {
    const samples = strokesInNoise(window, 48_000, [{ time: middle, levelDb: -12, seed: 4 }], -90);
    const { time } = refineOnset(samples.slice(), 48_000, middle * 48_000 + 30);
    for (const gain of [-1, 0.03, -30]) {
      const other = refineOnset(
        samples.map((value) => gain * value),
        48_000,
        middle * 48_000 + 30,
      );
      expect(Math.abs(other.time - time)).toBeLessThan(1e-7);
    }
  });

  it('knows how well it knows: the error grows with the noise, and the deviation with it', () => {
    const at = [-90, -50, -30].map((noiseDb) => {
      const found = seeds.map((seed) => errorOf({ levelDb: -14, seed }, 48_000, noiseDb));
      return {
        error: Math.hypot(...found.map(({ error }) => error)) / Math.sqrt(seeds.length),
        se: median(found.map(({ curvatureSe }) => curvatureSe)),
        depthDb: median(found.map(({ depthDb }) => depthDb)),
      };
    });
    expect(at[2]!.error).toBeGreaterThan(at[0]!.error);
    expect(at[2]!.se).toBeGreaterThan(3 * at[0]!.se);
    expect(at[0]!.depthDb).toBeGreaterThan(at[1]!.depthDb);
    expect(at[1]!.depthDb).toBeGreaterThan(at[2]!.depthDb);
  });

  it('gives numbers in silence and in plain noise', () => {
    for (const samples of [
      new Float32Array(1920),
      whiteNoise(1920, 0.01, 1),
      new Float32Array(1920).fill(0.5),
    ]) {
      const { time, curvatureSe } = refineOnset(samples, 48_000, 1300);
      expect(Math.abs(time * 48_000 - 1300)).toBeLessThan(0.006 * 48_000);
      expect(Number.isFinite(curvatureSe)).toBe(true);
    }
  });

  it('needs no more of the past than it says', () => {
    const samples = strokesInNoise(window, 48_000, [{ time: middle, levelDb: -12, seed: 4 }]);
    const from = Math.floor((middle - pastSeconds - 0.006) * 48_000);
    const whole = refineOnset(samples, 48_000, middle * 48_000);
    const cut = refineOnset(samples.slice(from), 48_000, middle * 48_000 - from);
    expect(cut.time + from / 48_000).toBeCloseTo(whole.time, 9);
  });
});

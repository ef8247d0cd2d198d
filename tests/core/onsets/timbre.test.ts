import { describe, expect, it } from 'vitest';
import { timbreError, timbreOf } from '../../../src/core/onsets/timbre.ts';
import { floatSource } from '../../support/float-source.ts';
import { strokesInNoise } from '../../support/made-strokes.ts';
import { riseCandidates } from '../../support/rise-candidates.ts';

const rise = (
  before: number,
  attack: readonly number[],
  body: readonly number[],
  after: readonly number[],
) => ({
  frame: 100,
  evidence: 100,
  before: attack.map(() => before),
  attack,
  body,
  after,
});

const alone = Number.POSITIVE_INFINITY;

describe('timbreOf', () => {
  const attack = [1e-3, 1e-2];
  const body = [1e-4, 1e-3];
  const after = [1e-6, 1e-5];

  it('gives the levels of the bands against their mean, then attack against body, then decay, dB', () => {
    // −30, −20, −40, −30 dB about their mean of −30; 0.011 against 0.0011: 10 dB; 0.0011 against 0.000011: 20 dB.
    const { values, errors, cut } = timbreOf(rise(0, attack, body, after), alone);
    const expected = [0, 10, -10, 0, 10, 20];
    values.forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i]!, 4);
    });
    expect(errors.every((error) => error < 1e-3)).toBe(true);
    expect(cut).toBe(false);
  });

  it('does not ask how loud the stroke was', () => {
    const soft = (powers: readonly number[]) => powers.map((power) => power / 100);
    const loud = timbreOf(rise(1e-7, attack, body, after), alone);
    const quiet = timbreOf(rise(1e-9, soft(attack), soft(body), soft(after)), alone);
    quiet.values.forEach((value, i) => {
      expect(value).toBeCloseTo(loud.values[i]!, 3);
    });
  });

  it('takes off what was there before, and says how far that may be wrong', () => {
    const { values, errors } = timbreOf(
      rise(
        1e-4,
        attack.map((power) => power + 1e-4),
        body.map((power) => power + 1e-4),
        after,
      ),
      alone,
    );
    [0, 10, -10, 0].forEach((value, i) => {
      expect(values[i]).toBeCloseTo(value, 3);
    });
    // The softer a band, the less is known of it.
    expect(errors[0]).toBeGreaterThan(errors[1]!);
    expect(errors[2]).toBeGreaterThan(errors[0]!);
  });

  it('knows little of what the next sound reaches into', () => {
    const near = timbreOf(rise(0, attack, body, after), 5);
    const nearer = timbreOf(rise(0, attack, body, after), 20);
    expect(near.cut).toBe(true);
    expect(near.errors.slice(0, 2).every((error) => error < 1)).toBe(true);
    expect(near.errors.slice(2).every((error) => error > 6)).toBe(true);
    expect(nearer.cut).toBe(false);
    expect(nearer.errors.slice(0, 5).every((error) => error < 1)).toBe(true);
    expect(nearer.errors[5]).toBeGreaterThan(6);
  });
});

describe('timbreError', () => {
  it('is the root mean square of the errors, of the attack alone where the rest is cut', () => {
    const values = [0, 0, 0, 0, 0, 0];
    expect(timbreError({ values, errors: [3, 4, 3, 4, 3, 4], cut: false })).toBeCloseTo(Math.sqrt(12.5), 12);
    expect(timbreError({ values, errors: [3, 4, 12, 12, 12, 12], cut: true })).toBeCloseTo(
      Math.sqrt(12.5),
      12,
    );
  });

  it('grows as a stroke drowns in noise', () => {
    const errorIn = (noiseDb: number) => {
      const samples = strokesInNoise(1, 48_000, [{ time: 0.5, levelDb: -20, seed: 1 }], noiseDb);
      const { rises } = riseCandidates(floatSource(48_000, samples));
      const best = rises.toSorted((a, b) => b.evidence - a.evidence)[0]!;
      return timbreError(timbreOf(best, alone));
    };
    const errors = [-90, -70, -50].map(errorIn);
    expect(errors[1]).toBeGreaterThan(errors[0]!);
    expect(errors[2]).toBeGreaterThan(errors[1]!);
  });
});

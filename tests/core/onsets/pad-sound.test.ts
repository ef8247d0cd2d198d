import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import {
  distanceFrom,
  fewestSounds,
  findPadSound,
  type Sounding,
} from '../../../src/core/onsets/pad-sound.ts';

const figures = 12;
const pad = { base: [-4, -1, 3, 6, 5, -9, -4, 0, 4, 7, 3, 14], slope: 0.15 };
const stick = { base: [8, 7, 2, -5, -9, 6, 5, 1, -6, -9, 9, 25], slope: 0.1 };

/** A sound of such a surface: duller the softer, with scatter of its own. */
function soundOf(
  { base, slope }: typeof pad,
  levelDb: number,
  seed: number,
  scatter = 1.5,
  errors = 0.2,
): Sounding {
  const random = seeded(seed);
  const values = base.map(
    (value, i) => value + slope * (i < 3 ? 1 : -1) * (levelDb + 18) + random.normal(0, scatter),
  );
  return { levelDb, evidence: 200, timbre: { values, errors: new Array(figures).fill(errors), cut: false } };
}

const take = (surface: typeof pad, count: number, from = 0) =>
  Array.from({ length: count }, (_, i) =>
    soundOf(surface, (i % 3 === 0 ? -10 : -26) + seeded(i).normal(0, 1.5), from + i),
  );

describe('findPadSound', () => {
  it('learns the pad: its strokes lie near, at every level', () => {
    const found = findPadSound(take(pad, 60))!;
    const near = take(pad, 60, 1000).map((sound) => distanceFrom(found, sound));
    expect(Math.max(...near)).toBeLessThan(2.7);
    // Root mean squares about 1: the scatter is that of the strokes.
    expect(near.reduce((sum, value) => sum + value, 0) / near.length).toBeCloseTo(1, 0);
  });

  it('learns how soft strokes differ from loud ones', () => {
    const found = findPadSound(take(pad, 90))!;
    found.slope.forEach((slope, i) => {
      expect(slope).toBeCloseTo(i < 3 ? 0.15 : -0.15, 1);
    });
    expect(found.fromDb).toBeLessThan(-24);
    expect(found.toDb).toBeGreaterThan(-12);
  });

  it('tells another surface by far', () => {
    const found = findPadSound(take(pad, 60))!;
    for (const sound of take(stick, 20)) expect(distanceFrom(found, sound)).toBeGreaterThan(4);
  });

  it.each([0.1, 0.25, 0.4])('goes with the majority when %f of the attacks are something else', (share) => {
    const others = Math.round((60 * share) / (1 - share));
    const mixed = [...take(stick, others), ...take(pad, 60)];
    const found = findPadSound(mixed)!;
    for (const sound of take(pad, 30, 2000)) expect(distanceFrom(found, sound)).toBeLessThan(2.7);
    for (const sound of take(stick, 10, 3000)) expect(distanceFrom(found, sound)).toBeGreaterThan(3);
  });

  it('gives the same answer for the same sounds', () => {
    expect(findPadSound(take(pad, 40))).toEqual(findPadSound(take(pad, 40)));
  });

  it('says nothing with too few sounds, or with nothing in common', () => {
    expect(findPadSound(take(pad, fewestSounds - 1))).toBeNull();
    expect(findPadSound(take(pad, fewestSounds))).not.toBeNull();
    const noise = Array.from({ length: 40 }, (_, i) =>
      soundOf({ base: new Array(figures).fill(0), slope: 0 }, -20, i, 40),
    );
    expect(findPadSound(noise)).toBeNull();
  });
});

describe('distanceFrom', () => {
  const each = (value: number) => new Array<number>(8).fill(value);
  // Three bands, the highest first: attack of each, body of each, attack against body, decay.
  const line = {
    middleDb: -20,
    base: each(0),
    slope: each(0).with(1, 0.5),
    scatter: each(1),
    fromDb: -30,
    toDb: -10,
  };
  const sound = (values: number[], known: Partial<Sounding['timbre']> = {}, levelDb = -20): Sounding => ({
    levelDb,
    evidence: 100,
    timbre: { values, errors: each(0), cut: false, ...known },
  });

  it('is the root mean square of the figures in standard deviations', () => {
    expect(distanceFrom(line, sound(each(0)))).toBe(0);
    expect(distanceFrom(line, sound(each(0).with(1, 3)))).toBeCloseTo(Math.sqrt(9 / 8), 12);
    expect(distanceFrom(line, sound(each(2)))).toBeCloseTo(2, 12);
    // 4 dB louder: the second figure should be 2 higher.
    expect(distanceFrom(line, sound(each(0).with(1, 2), {}, -16))).toBeCloseTo(0, 12);
  });

  it('counts less what is less known', () => {
    const unsure = sound(each(0).with(4, 3), { errors: each(0).with(4, 3) });
    expect(distanceFrom(line, unsure)).toBeCloseTo(Math.sqrt(0.9 / 8), 12);
    // 10 dB softer than all that the line was learned from, it is less sure itself.
    const within = distanceFrom(line, sound(each(0).with(1, -5).with(4, 2), {}, -30));
    const beyond = distanceFrom(line, sound(each(0).with(1, -10).with(4, 2), {}, -40));
    expect(within).toBeCloseTo(Math.sqrt(4 / 8), 12);
    expect(beyond).toBeLessThan(within);
  });

  it('forgives a sound cut short what all its bands are off by together', () => {
    expect(distanceFrom(line, sound([5, 5, 5, 5, 5, 5, 0, 0], { cut: true }))).toBeCloseTo(0, 12);
    expect(distanceFrom(line, sound([5, 5, 5, 5, 5, 5, 0, 0]))).toBeGreaterThan(3);
    expect(distanceFrom(line, sound([5, -5, 5, -5, 5, -5, 0, 0], { cut: true }))).toBeGreaterThan(3);
  });
});

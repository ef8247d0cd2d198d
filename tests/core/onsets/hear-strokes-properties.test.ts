import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { hearStrokes } from '../../../src/core/onsets/hear-strokes.ts';
import type { Hearing } from '../../../src/core/onsets/stroke.ts';
import { floatSource } from '../../support/float-source.ts';
import { type MadeStroke, strokesInNoise } from '../../support/made-strokes.ts';
import { resampled } from '../../support/resampled.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const seconds = 3.6;

/** Accented triplets with a player's scatter, in noise 50 dB under the taps. */
function played(seed: number, kind: NonNullable<MadeStroke['kind']>): Float32Array {
  const random = seeded(seed);
  const strokes = Array.from({ length: 20 }, (_, i): MadeStroke => {
    const accent = i % 3 === 0;
    const levelDb = (accent ? -9 : -25) + random.normal(0, 1.3);
    const time = 0.3 + 0.15 * i + random.normal(0, 0.005);
    return { time, levelDb, softDb: accent ? 0 : 16, kind, seed: 100 * seed + i };
  });
  return strokesInNoise(seconds, rate, strokes, -80, seed);
}

const seed = fc.integer({ min: 1, max: 10_000 });
const kind = fc.constantFrom('rubber-pad', 'laminate-pad', 'rim', 'snare', 'mesh');
const runs = { numRuns: 4, seed: 20 };

const hear = (...channels: Float32Array[]) => hearStrokes(floatSource(rate, ...channels));

interface Tolerance {
  readonly seconds: number;
  readonly db: number;
}
const exact: Tolerance = { seconds: 1e-9, db: 1e-4 };

/** Whether the second hearing is the first, every stroke so much later and so much louder. */
function expectMoved(first: Hearing, second: Hearing, later: number, louderDb: number, tolerance = exact) {
  expect(second.sounds.map(({ sound }) => sound)).toEqual(first.sounds.map(({ sound }) => sound));
  first.sounds.forEach((stroke, i) => {
    const other = second.sounds[i]!;
    expect(Math.abs(other.time - stroke.time - later)).toBeLessThan(tolerance.seconds);
    expect(Math.abs(other.levelDb - stroke.levelDb - louderDb)).toBeLessThan(tolerance.db);
  });
  expect(second.click).toEqual(first.click);
}

/** A property of what is heard in a take and in another made from it. */
function property(check: (take: Float32Array, hearing: Hearing) => void, numRuns = runs.numRuns) {
  fc.assert(
    fc.property(seed, kind, (number, surface) => {
      const take = played(number, surface);
      const hearing = hear(take);
      expect(hearing.sounds.length).toBeGreaterThanOrEqual(20);
      check(take, hearing);
    }),
    { ...runs, numRuns },
  );
}

describe('hearStrokes', () => {
  it('hears the same twice', () => {
    property((take, hearing) => expect(hear(take)).toEqual(hearing));
  });

  it.each([-40, -20, -6, 6, 40])('follows a gain of %i dB: levels move and nothing else', (db) => {
    property((take, hearing) => {
      const louder = hear(take.map((value) => value * 10 ** (db / 20)));
      expectMoved(hearing, louder, 0, db, { seconds: 1e-6, db: 0.001 });
    });
  });

  it('does not hear which way up the microphone is wired', () => {
    property((take, hearing) => expectMoved(hearing, hear(take.map((value) => -value)), 0, 0));
  });

  it('does not hear a steady voltage', () => {
    property((take, hearing) => {
      for (const level of [0.05, -0.003]) {
        const shifted = hear(take.map((value) => value + level));
        // The level found is right to a part in ten thousand of full scale; a slow first attack out of silence shows it.
        expectMoved(hearing, shifted, 0, 0, { seconds: 2e-5, db: 0.1 });
      }
    });
  });

  it('hears two like channels as one, in either order, and a dead one not at all', () => {
    property((take, hearing) => {
      const [left, right] = [take.map((value) => 1.2 * value), take.map((value) => 0.8 * value)];
      const both = hear(left, right);
      expectMoved(hearing, both, 0, 0, { seconds: 1e-6, db: 0.001 });
      expect(hear(right, left)).toEqual(both);
      const dead = new Float32Array(take.length);
      expect(hear(take, dead)).toEqual(hearing);
      expect(hear(dead, take)).toEqual(hearing);
    });
  });

  it('hears strokes later by the noise or silence before them', () => {
    for (const samples of [4800, 31_337]) {
      property((take, hearing) => {
        for (const before of [whiteNoise(samples, 1e-4, 3), new Float32Array(samples)]) {
          const later = hear(Float32Array.from([...before, ...take]));
          // Frames and noise fall otherwise, so places agree to a small part of a sample and not to the last bit.
          expectMoved(hearing, later, samples / rate, 0, { seconds: 1.5e-5, db: 0.05 });
        }
      });
    }
  });

  it('hears two takes in a row as one and the other', () => {
    fc.assert(
      fc.property(seed, kind, (number, surface) => {
        const [first, second] = [played(number, surface), played(number + 1, surface)];
        const both = hear(Float32Array.from([...first, ...second]));
        const moved = hear(second).sounds.map((stroke) => ({ ...stroke, time: stroke.time + seconds }));
        const apart = { ...both, sounds: [...hear(first).sounds, ...moved] };
        expectMoved(apart, both, 0, 0, { seconds: 2e-6, db: 0.01 });
      }),
      runs,
    );
  });

  it('hears at 44.1 kHz what it hears at 48 kHz', () => {
    property((take) => {
      const [at48, at44] = [rate, 44_100].map((other) =>
        hearStrokes(floatSource(other, resampled(take, rate, other, 18_000))),
      );
      // What the resampling spreads ahead of an attack falls otherwise among the samples, and the level's band ends at
      // 2.8 instead of 3 kHz.
      expectMoved(at48!, at44!, 0, 0, { seconds: 1e-4, db: 0.2 });
    }, 2);
  });
});

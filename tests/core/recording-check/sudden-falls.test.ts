import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binSeconds } from '../../../src/core/recording-check/quiet-course.ts';
import { suddenFallsDb } from '../../../src/core/recording-check/sudden-falls.ts';

const decibels = (power: number) => 10 * Math.log10(power);
/** A gate's gain, which goes down to −25 dB with 6 ms: the closed form of a first-order lag. */
const gateDb = (since: number) =>
  since < 0 ? 0 : 20 * Math.log10(10 ** -1.25 + (1 - 10 ** -1.25) * Math.exp(-since / 0.006));
/** 60 bins of a sound of −30 dB that dies away by `dbPerSecond` over a floor of −80 dB. */
const decay = (dbPerSecond: number, closes = Number.POSITIVE_INFINITY) =>
  Array.from({ length: 60 }, (_, bin) => {
    const time = bin * binSeconds;
    return decibels(10 ** ((-30 - dbPerSecond * time) / 10) + 1e-8) + gateDb(time - closes);
  });

describe('sudden falls', () => {
  it('are none of sounds that die away over a steady noise: a sum of exponentials is convex on a scale of decibels', () => {
    // Boyd & Vandenberghe, Convex Optimization, 3.1.5: log-sum-exp is convex (quoted from memory).
    const part = fc.record({
      level: fc.double({ min: -60, max: -10, noNaN: true }),
      rate: fc.double({ min: 20, max: 900, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 5 }),
        fc.double({ min: -90, max: -50, noNaN: true }),
        (parts, floor) => {
          const course = Array.from({ length: 60 }, (_, bin) =>
            decibels(
              parts.reduce(
                (sum, { level, rate }) => sum + 10 ** ((level - rate * bin * binSeconds) / 10),
                10 ** (floor / 10),
              ),
            ),
          );
          expect(suddenFallsDb(Array(12).fill(course))).toBe(0);
        },
      ),
    );
  });

  it('are what a gate cuts off, of as few sounds as one in eight', () => {
    const closed = decay(120, 0.15);
    // Three lags of 6 ms: 20 log10(0.056 + 0.944 e^-3) = −19.7 dB.
    const falls = suddenFallsDb([...Array(5).fill(closed), ...Array(35).fill(decay(120))]);
    expect(falls).toBeGreaterThan(15);
    expect(falls).toBeLessThan(20.5);
    expect(suddenFallsDb([...Array(4).fill(closed), ...Array(36).fill(decay(120))])).toBe(0);
  });

  it('are no matter of too few or too short sounds', () => {
    expect(suddenFallsDb([])).toBe(0);
    expect(suddenFallsDb(Array(20).fill(decay(120, 0.02).slice(0, 9)))).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { motorSpread } from '../../../src/core/measures/motor-spread.ts';
import { describeClockOrMotor, playWithoutClick as play } from './clock-and-motor.ts';
import { coverage, outcomeOf } from './coverage.ts';

describeClockOrMotor(motorSpread);

describe('the error of finding strokes', () => {
  it("is taken out of the movement's part", () => {
    const runs = 200;
    const { mean } = coverage(runs, (seed) => play(seed, { timeSe: 0.0018 }), 4, motorSpread);
    expect(Math.abs(mean - 4)).toBeLessThan(0.4);
  });

  it("leaves no figure where it is as large as the movement's part", () => {
    expect(outcomeOf(motorSpread, play(1, { timeSe: 0.004 }))).toMatchObject({
      reason: { code: 'found-too-coarsely' },
    });
  });
});

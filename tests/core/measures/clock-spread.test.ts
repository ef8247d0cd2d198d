import { expect, it } from 'vitest';
import { clockSpread } from '../../../src/core/measures/clock-spread.ts';
import { describeClockOrMotor, playWithoutClick } from './clock-and-motor.ts';
import { outcomeOf } from './coverage.ts';

describeClockOrMotor(clockSpread);

it('wants intervals that follow each other', () => {
  const take = playWithoutClick(1, { sheet: 'tempo: 111.111\nRL- LR-; x70' });
  expect(outcomeOf(clockSpread, take)).toMatchObject({
    reason: { code: 'too-few-intervals', facts: { intervals: 0 } },
  });
});

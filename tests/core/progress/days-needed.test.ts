import { describe, expect, it } from 'vitest';
import { daysNeeded } from '../../../src/core/progress/days-needed.ts';

describe('daysNeeded', () => {
  // R 4.2.2: power.t.test(delta, sd, power = 0.8)$n
  it.each([
    [1, 1, 16.71477],
    [1, 0.7, 8.764711],
    [0.5, 1, 63.76576],
    [0.5, 0.7, 31.75716],
    [0.5, 0.3, 6.76095],
    [0.8, 1, 25.52463],
    [0.8, 0.3, 3.484297],
    [0.223, 0.12, 5.687053],
  ])('a difference of %d at a scatter of %d needs what R says to a day', (difference, sd, n) => {
    expect(Math.abs(daysNeeded(difference, sd)! - Math.ceil(n))).toBeLessThanOrEqual(1);
    expect(daysNeeded(-difference, sd)).toBe(daysNeeded(difference, sd));
  });

  it('is 17 in the example, never under three, and gives up at last', () => {
    expect(daysNeeded(1, 1)).toBe(17);
    expect(daysNeeded(1, 0.01)).toBe(3);
    expect(daysNeeded(0.01, 1)).toBeNull();
  });
});

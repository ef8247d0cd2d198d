import { describe, expect, it } from 'vitest';
import { clockTime } from '../../src/charts/clock-time.ts';

describe('clockTime', () => {
  it('shows minutes and seconds and carries when it rounds', () => {
    expect(clockTime(75.26, 1)).toBe('1:15.3');
    expect(clockTime(5)).toBe('0:05');
    expect(clockTime(59.96, 1)).toBe('1:00.0');
    expect(clockTime(3600)).toBe('60:00');
  });
});

import { describe, expect, it } from 'vitest';
import { silentBars } from '../../../src/core/click-track/silent-bars.ts';

describe('silentBars', () => {
  const bars = (heard: number, lengths: number[]) => {
    const isSilent = silentBars({ heard, lengths });
    return Array.from({ length: 14 }, (_, bar) => (isSilent(bar) ? '-' : 'x')).join('');
  };

  it('follows the schedule, its last length for ever', () => {
    expect(bars(1, [1, 2])).toBe('x-x--x--x--x--');
    expect(bars(3, [2])).toBe('xxx--xxx--xxx-');
    expect(bars(2, [0, 3])).toBe('xxxx---xx---xx');
  });

  it('leaves nothing silent without a schedule', () => {
    expect(silentBars(null)(3)).toBe(false);
    expect(bars(0, [1])).toBe('xxxxxxxxxxxxxx');
  });
});

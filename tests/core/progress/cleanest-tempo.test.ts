import { describe, expect, it } from 'vitest';
import { cleanestTempo } from '../../../src/core/progress/cleanest-tempo.ts';

const take = (day: string, bpm: number, weakest: number) => ({ day, bpm, weakest });

describe('cleanestTempo', () => {
  it('is the fastest that was secure on two days', () => {
    const takes = [take('a', 100, 90), take('b', 102, 88), take('b', 120, 95), take('c', 140, 60)];
    expect(cleanestTempo(takes)).toEqual({ bpm: 100, days: 2 });
  });

  it('takes one day where there is no second, and none where nothing was secure', () => {
    expect(cleanestTempo([take('a', 100, 90), take('a', 120, 95)])).toEqual({ bpm: 120, days: 1 });
    expect(cleanestTempo([take('a', 100, 84)])).toBeNull();
    expect(cleanestTempo([])).toBeNull();
  });

  it('a day is its median, not its best take', () => {
    expect(cleanestTempo([take('a', 100, 95), take('a', 100, 60), take('a', 100, 50)])).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { tempoOfBeats } from '../../../src/core/click-track/tempo-of-beats.ts';

const beats = (period: number, count: number, from = 0) =>
  Array.from({ length: count }, (_, i) => from + i * period);

describe('tempoOfBeats', () => {
  it('tells the tempo of even beats from the third on', () => {
    expect(tempoOfBeats([0, 0.5, 1, 1.5])).toBeCloseTo(120, 9);
    expect(tempoOfBeats(beats(0.5, 3))).toBeCloseTo(120, 9);
    expect(tempoOfBeats(beats(0.5, 2))).toBeNull();
    expect(tempoOfBeats([])).toBeNull();
  });

  it('follows a new tempo after a pause, and lets one beat be left out', () => {
    expect(tempoOfBeats([...beats(0.5, 8), ...beats(1, 4, 20)])).toBeCloseTo(60, 9);
    expect(tempoOfBeats(beats(0.6, 9).filter((_, i) => i !== 4))).toBeCloseTo(100, 9);
  });
});

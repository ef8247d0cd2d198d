import { describe, expect, it } from 'vitest';
import { bartlettVariance } from '../../../src/core/stats/bartlett-variance.ts';

describe('bartlettVariance', () => {
  it('is the example', () => expect(bartlettVariance([1, -1, 1, -1], 1)).toBe(1));
  // Computed with numpy from the definition.
  it('of a short series at lag 2', () => {
    expect(bartlettVariance([0.3, -1.2, 0.7, 0.9, -0.4, 1.1, -2.0, 0.6], 2)).toBeCloseTo(
      3.066666666666664,
      12,
    );
  });
  it('keeps groups apart', () => {
    expect(bartlettVariance([1, 2, 3, 4], 1, [0, 0, 1, 1])).toBe(30 + 2 + 12);
  });
});

import { describe, expect, it } from 'vitest';
import { wanderDegrees } from '../../../src/core/measures/wander-degrees.ts';

describe('wanderDegrees', () => {
  // Brownian motion less its least-squares line on 0…1: ∫ of the variance is 1/15 and ∫∫ of the squared covariance
  // 11/12600 (worked out by hand from the covariance), so that E²/∫∫ = (1/15)²/(11/12600) = 5.09.
  it.each([400, 2000])('of a random walk over %i beats come near 5.09', (beats) => {
    expect(wanderDegrees({ memory: 1, ratio: 100 }, { beats, perBeat: 3 })).toBeGreaterThan(4.6);
    expect(wanderDegrees({ memory: 1, ratio: 100 }, { beats, perBeat: 3 })).toBeLessThan(5.6);
  });

  it('grow with the length where the memory is short', () => {
    const short = wanderDegrees({ memory: 0.3, ratio: 1 }, { beats: 20, perBeat: 3 });
    const long = wanderDegrees({ memory: 0.3, ratio: 1 }, { beats: 60, perBeat: 3 });
    expect(long / short).toBeGreaterThan(2.5);
  });
});

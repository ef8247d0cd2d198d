import { describe, expect, it } from 'vitest';
import { likelyDelays } from '../../../src/core/click/put-delays.ts';

const attack = (time: number) => ({ time, levelDb: -20 });
const clicks = [{ kind: 'beat', times: [0, 0.7, 1.3, 1.8] }];

describe('likelyDelays', () => {
  it('names the delay on which most clicks lie on attacks first', () => {
    const attacks = [0.21, 0.3, 0.91, 1.1, 1.51, 2.01].map(attack);
    expect(likelyDelays(clicks, attacks)[0]).toBeCloseTo(0.21, 9);
  });

  it('names none where nothing is heard within the ways that sound takes', () => {
    expect(likelyDelays(clicks, [])).toEqual([]);
    expect(likelyDelays(clicks, [3, 4].map(attack))).toEqual([]);
  });
});

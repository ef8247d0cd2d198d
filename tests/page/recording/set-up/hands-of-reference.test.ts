import { describe, expect, it } from 'vitest';
import { sittingMs } from '../../../../src/page/recording/set-up/compare-with-kept.ts';
import {
  type HandAt,
  handsBefore,
  handWanted,
  noHands,
} from '../../../../src/page/recording/set-up/hands-of-reference.ts';

const heard = (at: number): HandAt => ({
  heard: { state: 'heard', levels: { mean: -20, sd: 1, n: 8 } },
  noiseFloorDb: -70,
  at,
});
const tooFew: HandAt = { heard: { state: 'too-few', strokes: 3 }, noiseFloorDb: -70, at: 0 };

describe('handsBefore', () => {
  it('keeps the other hand of a reference that is being played', () => {
    expect(handsBefore({ right: heard(0), left: null }, 'left', 60_000).right).toEqual(heard(0));
    expect(handsBefore({ right: heard(0), left: tooFew }, 'left', 60_000)).toEqual({
      right: heard(0),
      left: null,
    });
  });

  it('begins anew once both were heard, and where the other hand was played long ago', () => {
    for (const hand of ['right', 'left'] as const)
      expect(handsBefore({ right: heard(0), left: heard(5000) }, hand, 60_000)).toEqual(noHands);
    expect(handsBefore({ right: heard(0), left: null }, 'left', sittingMs + 1)).toEqual(noHands);
  });
});

describe('handWanted', () => {
  it('is the other one of a hand that was heard', () => {
    expect(handWanted(noHands)).toBeNull();
    expect(handWanted({ right: heard(0), left: null })).toBe('left');
    expect(handWanted({ right: tooFew, left: heard(0) })).toBe('right');
    expect(handWanted({ right: heard(0), left: heard(0) })).toBeNull();
    expect(handWanted({ right: tooFew, left: null })).toBeNull();
  });
});

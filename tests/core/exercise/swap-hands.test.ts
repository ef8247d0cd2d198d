import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';
import { otherHand, swapHands } from '../../../src/core/exercise/swap-hands.ts';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { anyBeats } from './beats-arbitrary.ts';

describe('swapHands', () => {
  it('changes every hand and nothing else', () => {
    const parsed = parseNotation('l>RLR- | LzrL');
    expect(parsed.ok && writeNotation(swapHands(parsed.beats))).toBe('r>LRL- | RzlR');
    expect(otherHand('L')).toBe('R');
  });

  it('twice is no change', () => {
    fc.assert(
      fc.property(anyBeats, (beats) => {
        expect(swapHands(swapHands(beats))).toEqual(beats);
      }),
    );
  });
});

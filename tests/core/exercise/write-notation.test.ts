import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { anyBeats } from './beats-arbitrary.ts';

describe('writeNotation', () => {
  it('writes the example of its comment', () => {
    const parsed = parseNotation('>RLR  >LRL|>lR-L\nRLRL');
    expect(parsed.ok && writeNotation(parsed.beats)).toBe('>RLR >LRL | l>R-L RLRL');
  });

  it('is read back as the same beats', () => {
    fc.assert(
      fc.property(anyBeats, (beats) => {
        expect(parseNotation(writeNotation(beats))).toEqual({ ok: true, beats });
      }),
    );
  });
});

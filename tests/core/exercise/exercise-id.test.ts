import { describe, expect, it } from 'vitest';
import { exerciseId } from '../../../src/core/exercise/exercise-id.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';

function idOf(notation: string): string {
  const parsed = parseNotation(notation);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return exerciseId(parsed.beats);
}

describe('exerciseId', () => {
  it('is the catalogue id for beats of the catalogue', () => {
    expect(idOf('>RLR >LRL >RLR >LRL')).toBe('triplet-1-hand-to-hand');
    expect(idOf('>LLR >RLL >RRL >LRR')).toBe('triplet-1-doubles-left');
  });

  it('depends on the notes alone', () => {
    expect(idOf('RLR   l>R-R')).toBe(idOf('RLR >lR-R\n'));
    expect(idOf('RLR')).not.toBe(idOf('RLR RLR'));
  });

  it('hashes as FNV-1a is defined', () => {
    // FNV-1a 64 of the single octet 'R' by the definition: (offset basis xor 0x52) × prime mod 2^64,
    // with the published basis 14695981039346656037 and prime 1099511628211.
    const expected = ((14695981039346656037n ^ 0x52n) * 1099511628211n) % 2n ** 64n;
    expect(idOf('R')).toBe(`own-${expected.toString(16).padStart(16, '0')}`);
  });
});

import { describe, expect, it } from 'vitest';
import { editDistance, nearestText } from '../../../src/core/exercise/nearest-text.ts';

describe('editDistance', () => {
  it('counts insertions, deletions and substitutions', () => {
    // The usual worked examples of Levenshtein's distance, quoted from memory.
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('saturday', 'sunday')).toBe(3);
    expect(editDistance('', 'abc')).toBe(3);
    expect(editDistance('abc', 'abc')).toBe(0);
  });
});

describe('nearestText', () => {
  it('finds the example of its comment, and nothing far off', () => {
    expect(nearestText('temop', ['tempo', 'times'])).toBe('tempo');
    expect(nearestText('Times', ['tempo', 'times'])).toBe('times');
    expect(nearestText('loudness', ['tempo', 'times'])).toBe('');
  });
});

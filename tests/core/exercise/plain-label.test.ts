import { describe, expect, it } from 'vitest';
import { plainLabel } from '../../../src/core/exercise/plain-label.ts';

describe('plainLabel', () => {
  it('is the name in the catalogue, or the start of the notation', () => {
    expect(plainLabel('eighth-1-doubles', '')).toBe('Eighths, accent 1, doubles');
    expect(plainLabel('own', 'RLR')).toBe('RLR');
    expect(plainLabel('own', 'R'.repeat(90))).toBe(`${'R'.repeat(59)}…`);
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { wobble } from '../../../src/core/click/clear-seconds.ts';
import { closerThanChance } from '../../../src/core/click/closer-than-chance.ts';

describe('closerThanChance', () => {
  it('is so for clicks read to a hundredth of a millisecond, however few', () => {
    expect(closerThanChance([4e-6, -8e-6, 4e-6])).toBe(true);
  });

  it('is so for many clicks on a wavering clock, and not for three of them', () => {
    const wavering = Array.from({ length: 12 }, (_, i) => (i % 2 === 0 ? 5e-5 : -5e-5));
    expect(closerThanChance(wavering)).toBe(true);
    expect(closerThanChance(wavering.slice(0, 3))).toBe(false);
  });

  it('is so for hardly any strokes that fall anywhere near', () => {
    const random = seeded(5);
    let taken = 0;
    for (let trial = 0; trial < 1000; trial++) {
      const off = Array.from({ length: 8 }, () => random.between(-wobble, wobble));
      if (closerThanChance(off)) taken++;
    }
    expect(taken).toBeLessThan(10);
  });
});

import { describe, expect, it } from 'vitest';
import { permutationP, signFlipP } from '../../../src/core/stats/permutation-p.ts';

describe('signFlipP', () => {
  it('is the example', () => expect(signFlipP([1, 2, 3])).toBe(2 / 8));

  // Darwin's maize as Fisher 1935 goes through it, quoted from memory: 863 of 32768 on each side.
  it("is that of Darwin's maize", () => {
    const differences = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48];
    expect(signFlipP(differences)).toBe(1726 / 32768);
  });

  it('needs 1 to 19 differences', () => {
    expect(() => signFlipP([])).toThrow(RangeError);
    expect(() => signFlipP(new Array(20).fill(1))).toThrow(RangeError);
  });
});

describe('permutationP', () => {
  it('is the example', () => expect(permutationP([4, 5], [1, 2])).toBe(1 / 6));

  // Mice of Efron & Tibshirani 1993, whose book gives about 0.14 from 1000 permutations; the exact count apart from
  // this code.
  it('is that of the mice', () => {
    const treated = [94, 197, 16, 38, 99, 141, 23];
    const control = [52, 104, 146, 10, 51, 30, 40, 27, 46];
    expect(permutationP(treated, control)).toBe(1613 / 11440);
  });

  it('needs two samples', () => expect(() => permutationP([1], [])).toThrow(RangeError));
});

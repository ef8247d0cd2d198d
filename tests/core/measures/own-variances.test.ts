import { describe, expect, it } from 'vitest';
import { localLines } from '../../../src/core/measures/local-lines.ts';
import { ownVariances } from '../../../src/core/measures/own-variances.ts';
import { normalFrom, uniformFrom } from './simulated-performance.ts';

describe('ownVariances', () => {
  it('gives mean squares back where nothing is mixed', () => {
    const taken = { squares: [4, 1, 2], shares: [1, 0, 0, 1, 1, 0], group: [0, 1, 0], groups: 2 };
    expect([...ownVariances(taken)]).toEqual([3, 1]);
  });

  it('solves the two equations of two groups', () => {
    // 0.9 a + 0.1 b = 4.6 and 0.2 a + 0.8 b = 8.8: worked by hand, a = 4, b = 10.
    const taken = { squares: [4.6, 8.8], shares: [0.9, 0.1, 0.2, 0.8], group: [0, 1], groups: 2 };
    const [a, b] = ownVariances(taken);
    expect(a).toBeCloseTo(4, 8);
    expect(b).toBeCloseTo(10, 8);
  });

  it('leaves a group without strokes at nothing, and those out that belong to none', () => {
    const taken = { squares: [4, 9], shares: [1, 0, 0, 1], group: [0, -1], groups: 2 };
    expect([...ownVariances(taken)]).toEqual([4, 0]);
  });

  it('finds the spread of two hands behind local lines that mix them', () => {
    const n = 6000;
    const normal = normalFrom(uniformFrom(7));
    const group = Int32Array.from({ length: n }, (_, i) => i % 2);
    const values = Float64Array.from(group, (hand) => (hand === 0 ? 1 : 4) * normal());
    const lines = localLines({
      position: Float64Array.from({ length: n }, (_, i) => i / 3),
      stretch: new Int32Array(n),
      used: new Uint8Array(n).fill(1),
    });
    const fit = lines.fit(values);
    const squares = values.map((value, i) => (value - fit[i]!) ** 2);
    const plain = squares.filter((_, i) => group[i] === 0);
    // The loose hand stirs the line: the steady one seems looser than it is by far more than chance.
    expect(plain.reduce((a, b) => a + b, 0) / plain.length).toBeGreaterThan(1.4);
    const own = ownVariances({ squares, shares: lines.residualShares(group, 2), group, groups: 2 });
    expect(Math.sqrt(own[0]!)).toBeGreaterThan(0.95);
    expect(Math.sqrt(own[0]!)).toBeLessThan(1.05);
    expect(Math.sqrt(own[1]!)).toBeGreaterThan(3.85);
    expect(Math.sqrt(own[1]!)).toBeLessThan(4.15);
  });
});

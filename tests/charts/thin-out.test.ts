import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinOut } from '../../src/charts/thin-out.ts';

const point = fc.record({ y: fc.double({ min: -50, max: 50, noNaN: true }) });

describe('thinOut', () => {
  it('leaves few points alone', () => {
    const points = [{ y: 2 }, { y: 3 }];
    expect(thinOut(points, 2)).toBe(points);
  });

  it('keeps exactly as many as allowed, the farthest among them, in order, and invents none', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 31, maxLength: 300 }), (points) => {
        const kept = thinOut(points, 30);
        expect(kept).toHaveLength(30);
        const places = kept.map((p) => points.indexOf(p));
        expect(places.every((at, i) => at >= 0 && (i === 0 || at > places[i - 1]!))).toBe(true);
        const sorted = points.map((p) => p.y).sort((a, b) => a - b);
        const middle = (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
        const distance = (p: { y: number }) => Math.abs(p.y - middle);
        expect(Math.max(...kept.map(distance))).toBe(Math.max(...points.map(distance)));
      }),
    );
  });

  it('spreads the others over the whole length', () => {
    const kept = thinOut(
      Array.from({ length: 1000 }, (_, x) => ({ x, y: 0 })),
      100,
    );
    for (let from = 200; from < 1000; from += 100) {
      expect(kept.filter(({ x }) => x >= from && x < from + 100).length).toBeGreaterThan(5);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinOut } from '../../src/charts/thin-out.ts';

const point = fc.record({
  x: fc.double({ min: 0, max: 100, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});

describe('thinOut', () => {
  it('leaves few points alone', () => {
    const points = [
      { x: 1, y: 2 },
      { x: 2, y: 3 },
    ];
    expect(thinOut(points, 2)).toBe(points);
  });

  it('keeps to the limit, keeps the extremes, keeps the order and invents nothing', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 40, maxLength: 300 }), (points) => {
        const kept = thinOut(points, 30);
        expect(kept.length).toBeLessThanOrEqual(30);
        const ys = points.map((p) => p.y);
        expect(kept.map((p) => p.y)).toContain(Math.max(...ys));
        expect(kept.map((p) => p.y)).toContain(Math.min(...ys));
        const places = kept.map((p) => points.indexOf(p));
        expect(places.every((at, i) => at >= 0 && (i === 0 || at > places[i - 1]!))).toBe(true);
      }),
    );
  });
});

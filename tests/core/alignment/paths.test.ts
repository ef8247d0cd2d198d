import { describe, expect, it } from 'vitest';
import { openPaths } from '../../../src/core/alignment/paths.ts';

describe('openPaths', () => {
  it('keeps the best path to each stroke and slot', () => {
    const paths = openPaths(4, 3, 2);
    paths.offer(0, 1, -5, -1, 'begin', 1, 0.5, 3);
    paths.offer(0, 1, -2, -1, 'pause', 1.1, 0.6, 4);
    paths.offer(0, 1, -9, -1, 'slip', 9, 9, 9);
    paths.offer(0, 2, -30, -1, 'begin', 1, 0.5, 3);
    expect(paths.bestAt(0)).toBe(-2);
    const nodes = paths.close(0, -22, 10);
    expect(nodes.map((node) => [paths.slot[node], paths.kind(node), paths.due[node]])).toEqual([
      [1, 'pause', 1.1],
    ]);
  });

  it('gives the best first and no more than asked for', () => {
    const paths = openPaths(2, 3, 1);
    for (const [slot, score] of [
      [0, -3],
      [1, -1],
      [2, -2],
    ] as const)
      paths.offer(1, slot, score, -1, 'next', 0, 1, 1);
    expect(paths.close(1, -20, 2).map((node) => paths.slot[node])).toEqual([1, 2]);
  });

  it('uses a row again for a later stroke', () => {
    const paths = openPaths(3, 1, 0);
    paths.offer(0, 0, -1, -1, 'begin', 0, 1, 1);
    const [first] = paths.close(0, -9, 9);
    paths.offer(1, 0, -4, first!, 'next', 1, 1, 2);
    const [second] = paths.close(1, -9, 9);
    expect(second).not.toBe(first);
    expect(paths.before[second!]).toBe(first);
  });

  it('forgets the paths that led nowhere, and keeps the one that leads on and what is held', () => {
    const strokes = 5000;
    const slots = 20;
    const paths = openPaths(strokes, slots, 0);
    let best = -1;
    let held = -1;
    for (let stroke = 0; stroke < strokes; stroke++) {
      for (let slot = 0; slot < slots; slot++)
        paths.offer(stroke, slot, -slot, best, stroke === 0 ? 'begin' : 'next', stroke, 1, 1);
      const nodes = paths.close(stroke, -99, slots);
      if (stroke === 100) {
        held = nodes[3]!;
        paths.hold(held);
      }
      // The best node of each stroke has no one after it yet: held until it has.
      paths.hold(nodes[0]!);
      paths.followed(nodes);
      paths.letGo(best);
      best = nodes[0]!;
    }
    expect(paths.stroke.length).toBeLessThan(2 * strokes);
    expect([paths.stroke[held], paths.slot[held]]).toEqual([100, 3]);
    const trail: number[] = [];
    for (let node = best; node >= 0; node = paths.before[node]!) trail.push(paths.stroke[node]!);
    expect(trail).toEqual(Array.from({ length: strokes }, (_, i) => strokes - 1 - i));
  });
});

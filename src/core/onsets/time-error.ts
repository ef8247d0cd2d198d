import type { RefinedOnset } from './refine-onset.ts';

/**
 * Error model of an onset, fitted to rendered takes (11 surfaces, rooms, noise, microphones; 10,000 strokes of known
 * time): the curvature is a little too wide where it is wide; strokes differ in their attack by so much however clear
 * they are; an attack that starts far under its peak hides its beginning.
 */
const model = { curvature: 0.85, leastSeconds: 0.0000075, lateFromDb: 15, lateSeconds: 0.00002 };

/** Standard error of a refined onset, s. */
export function timeError({ curvatureSe, lateDb }: RefinedOnset): number {
  const { curvature, leastSeconds, lateFromDb, lateSeconds } = model;
  return Math.hypot(curvature * curvatureSe, leastSeconds, lateDb > lateFromDb ? lateSeconds : 0);
}

import type { RefinedOnset } from './refine-onset.ts';

/**
 * Error model of an onset, fitted to rendered takes (11 surfaces, rooms, noise, microphones; 9,000 strokes of known
 * time), so that errors over their standard errors have a spread of one in each kind of take:
 * - the curvature's share, smaller where it is wide against the sample, as `curvature.atSamples` is for a clear stroke;
 * - strokes differ in their attack by `leastSeconds` however clear they are;
 * - an attack that swells, its first quarter of a millisecond far under its peak, has no sharp beginning;
 * - and what of a swelling attack lies under the floor is hidden: each decibel of either counts.
 */
const model = {
  curvature: { share: 0.68, atSamples: 0.29, wider: -0.15 },
  leastSeconds: 4.8e-6,
  swell: { fromDb: 2.3, mostDb: 20, seconds: 2.1e-6 },
  hidden: { depthDb: 48, seconds: 0.35e-6 },
};

/** Standard error of an onset refined at `rate` Hz, s. */
export function timeError({ curvatureSe, depthDb, lateDb }: RefinedOnset, rate: number): number {
  const { curvature, leastSeconds, swell, hidden } = model;
  const width = Math.max(1, (curvatureSe * rate) / curvature.atSamples);
  const lateness = Math.min(lateDb, swell.mostDb);
  return Math.hypot(
    curvature.share * curvatureSe * width ** curvature.wider,
    leastSeconds,
    swell.seconds * Math.max(0, lateness - swell.fromDb),
    hidden.seconds * lateness * Math.max(0, hidden.depthDb - depthDb),
  );
}

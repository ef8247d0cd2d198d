import type { Finding, HeardRecording } from './heard-recording.ts';
import { noiseFloor } from './noise-floor.ts';
import { stepNoiseAlone } from './step-noise-alone.ts';
import { tapToNoise } from './tap-to-noise.ts';

/** Stored in few bits: what is softer than a step is lost, and the steps are a noise that taps have to stand over. */
export function coarseSteps(heard: HeardRecording): Finding | null {
  const { coarse } = heard;
  if (coarse === null) return null;
  const facts = { bits: 1 - Math.log2(coarse.step), stepDb: 20 * Math.log10(coarse.step) };
  // It spoils what as much noise of a place would; where the place is louder, its own findings tell that.
  const asOfPlace = { ...heard, coarse: null };
  const checks = stepNoiseAlone(heard) ? [tapToNoise, noiseFloor] : [];
  const spoils = checks.flatMap((check) => check(asOfPlace)?.spoils ?? []);
  return { code: 'coarse-samples', facts, spoils: [...new Set(spoils)] };
}

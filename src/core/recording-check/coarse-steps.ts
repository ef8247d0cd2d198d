import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { noiseFloor } from './noise-floor.ts';
import { allLevels, strokeCounts } from './spoiled-measures.ts';
import { stepNoiseAlone } from './step-noise-alone.ts';
import { tapToNoise } from './tap-to-noise.ts';

const lowTaps = [...new Set([...allLevels, ...strokeCounts])];

/** Whether the middle one of the taps is less than a step high, so that others are none at all. */
function tapsUnderStep({ performance }: HeardRecording, stepDb: number): boolean {
  const taps = performance.strokes.flatMap(({ slot, levelDb }) => (slot.accent ? [] : [levelDb]));
  return taps.length > 0 && median(taps) < stepDb;
}

/** Stored in few bits: what is softer than a step is lost, and the steps are a noise that taps have to stand over. */
export function coarseSteps(heard: HeardRecording): Finding | null {
  const { coarse } = heard;
  if (coarse === null) return null;
  const stepDb = 20 * Math.log10(coarse.step);
  const facts = { bits: 1 - Math.log2(coarse.step), stepDb };
  // It spoils what as much noise of a place would; where the place is louder, its own findings tell that.
  const asOfPlace = { ...heard, coarse: null };
  const checks = stepNoiseAlone(heard) ? [tapToNoise, noiseFloor] : [];
  const asNoise = checks.flatMap((check) => check(asOfPlace)?.spoils ?? []);
  const spoils = tapsUnderStep(heard, stepDb) ? [...lowTaps, ...asNoise] : asNoise;
  return { code: 'coarse-samples', facts, spoils: [...new Set(spoils)] };
}

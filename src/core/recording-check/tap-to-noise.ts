import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { accentsHeard, allLevels, strokeCounts, tapLevels } from './spoiled-measures.ts';

/** Below these, dB, taps are near the noise: worth a word, wrong in level, missed. Set by `reports/recording-check.md`. */
const near = { said: 16, levels: 9, all: 5 };
const fewest = 4;

/** How far the softer written strokes stand above the noise in their own band, dB; null without enough strokes. */
function tapToNoiseDb({ performance, noiseDb }: HeardRecording): number | null {
  const taps = performance.strokes.filter(({ slot }) => !slot.accent);
  const some = taps.length >= fewest ? taps : performance.strokes;
  if (some.length < fewest) return null;
  return median(some.map(({ levelDb }) => levelDb)) - noiseDb;
}

/** Taps that hardly rise above the noise. */
export function tapToNoise(heard: HeardRecording): Finding | null {
  const overDb = tapToNoiseDb(heard);
  if (overDb === null || !(overDb < near.said)) return null;
  const spoils =
    overDb < near.all
      ? [...new Set([...allLevels, ...accentsHeard, ...strokeCounts])]
      : overDb < near.levels
        ? [...tapLevels]
        : [];
  return { code: 'taps-near-noise', facts: { overDb }, spoils };
}

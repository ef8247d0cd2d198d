import { median } from '../stats/median.ts';
import { type FaintSounds, faintEvidence, faintSounds } from './faint-sounds.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { accentsHeard, allLevels, strokeCounts, strokeTimes, tapLevels } from './spoiled-measures.ts';
import { stepNoiseAlone } from './step-noise-alone.ts';

/**
 * Below these, dB, taps are near the noise: worth a word, wrong in level, missed. Set by `reports/recording-check.md`.
 */
const near = { said: 16, levels: 9, all: 5 };
const fewest = 4;
/**
 * Noise outside the strokes' own band hides attacks, too: they are faint by it only where it is this near in the band
 * as well, dB; where it is further off, a drum's ringing hides them.
 */
const hiddenWithinDb = 30;
/** A quarter of the softer sounds with less evidence, nats: as many strokes have none at all. */
const missedEvidence = 18;
/**
 * Share of sounds left out from which strokes are missing, and from which accents may be laid where taps are written.
 */
const leftOut = { counts: 0.1, all: 0.25 };

/** How far the softer written strokes stand above the noise in their own band, dB; null without enough strokes. */
function tapToNoiseDb({ performance, noiseDb }: HeardRecording): number | null {
  const taps = performance.strokes.filter(({ slot }) => !slot.accent);
  const some = taps.length >= fewest ? taps : performance.strokes;
  if (some.length < fewest) return null;
  return median(some.map(({ levelDb }) => levelDb)) - noiseDb;
}

const levelsAndCounts: readonly string[] = [...new Set([...allLevels, ...accentsHeard, ...strokeCounts])];

/** What is spoilt by how many attacks the noise hides. */
function spoiltByFaint({ evidence, leftOut: share }: FaintSounds): readonly string[] {
  if (share >= leftOut.all) return [...levelsAndCounts, ...strokeTimes];
  if (share >= leftOut.counts) return levelsAndCounts;
  return evidence < missedEvidence ? strokeCounts : [];
}

/** What is spoilt by how near the noise is in the band in which levels are taken. */
function spoiltByLevel(overDb: number): readonly string[] {
  if (overDb < near.all) return levelsAndCounts;
  return overDb < near.levels ? tapLevels : [];
}

/** Taps that hardly rise above the noise. */
export function tapToNoise(heard: HeardRecording): Finding | null {
  if (stepNoiseAlone(heard)) return null;
  const asWrittenDb = tapToNoiseDb(heard);
  const faint = faintSounds(heard.hearing.sounds);
  const faintDb = faint === null ? Number.NaN : faint.levelDb - heard.noiseDb;
  const hidden = faint !== null && faintDb < hiddenWithinDb && faint.evidence < faintEvidence;
  const low = asWrittenDb !== null && asWrittenDb < near.said;
  if (!hidden && !low) return null;
  // Where taps were left out, those that are written as taps are accents.
  const overDb = low ? asWrittenDb : faintDb;
  const spoils = [...(low ? spoiltByLevel(asWrittenDb) : []), ...(hidden ? spoiltByFaint(faint) : [])];
  return { code: 'taps-near-noise', facts: { overDb }, spoils: [...new Set(spoils)] };
}

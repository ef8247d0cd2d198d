import type { Finding, HeardRecording } from './heard-recording.ts';
import { binSeconds, type QuietCourse } from './quiet-course.ts';
import { allLevels } from './spoiled-measures.ts';

/** A stroke's own end isn't background yet, s. */
const fromSeconds = 0.03;
/** The background sinks after loud strokes by so much, dB, only where something turns it down. */
const leastDb = 1.5;
/** The flicker of 16 bits comes after any gain control and hides it, dB of the mean square step. */
const lastBitDb = -91;

/** How far the background sinks after loud strokes under what it is in pauses, dB; NaN where that can't be told. */
function duckingDb({ afterLoudDb, pauseDb }: QuietCourse): number {
  const late = afterLoudDb.slice(Math.ceil(fromSeconds / binSeconds));
  if (late.length === 0) return Number.NaN;
  return pauseDb - Math.min(...late);
}

/**
 * Gain control or a limiter: after a loud stroke the hiss of the place is softer than in a pause, and comes back while
 * the gain rises. In a plain recording a stroke's own end can only add to it.
 */
export function gainControl({ quiet }: HeardRecording): Finding | null {
  const sinksDb = duckingDb(quiet);
  if (!(sinksDb >= leastDb) || quiet.pauseDb < lastBitDb) return null;
  return { code: 'gain-control', facts: { sinksDb }, spoils: [...allLevels] };
}

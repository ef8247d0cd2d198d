import type { Finding, HeardRecording } from './heard-recording.ts';
import { hissSinksDb } from './hiss-sink.ts';
import { binSeconds, type QuietCourse } from './quiet-course.ts';
import { hasHoles } from './spectral-holes.ts';
import { allLevels } from './spoiled-measures.ts';

/** A stroke's own end isn't background yet, s. */
const fromSeconds = 0.03;
/** The background sinks after loud strokes by so much, dB, only where something turns it down. */
const leastDb = 1.5;
/** The highest hiss is steadier: clean rendered takes come to 0.4 at most (`reports/recording-check.md`). */
const leastHissDb = 1.3;
/** The flicker of 16 bits comes after any gain control and hides it, dB of the mean square step. */
const lastBitDb = -91;

/** How far the background sinks after loud strokes under what it is in pauses, dB; NaN where that can't be told. */
function duckingDb({ afterLoudDb, pauseDb }: QuietCourse): number {
  const late = afterLoudDb.slice(Math.ceil(fromSeconds / binSeconds));
  if (late.length === 0) return Number.NaN;
  return pauseDb - Math.min(...late);
}

/**
 * Gain control: while it is played the hiss of the place is softer than in a pause, and comes back while the gain
 * rises. In a plain recording a stroke's own end can only add to it. Where drums ring through, it is heard above them;
 * holes in the spectrum, which packing makes as it needs, say nothing there.
 */
export function gainControl(heard: HeardRecording): Finding | null {
  const { quiet, unevenness } = heard;
  if (quiet.pauseDb < lastBitDb) return null;
  const sinksDb = duckingDb(quiet);
  const spoils = [...allLevels];
  if (sinksDb >= leastDb) return { code: 'gain-control', facts: { sinksDb }, spoils };
  const hissDb = hasHoles(unevenness) ? Number.NaN : hissSinksDb(heard);
  return hissDb >= leastHissDb ? { code: 'gain-control', facts: { sinksDb: hissDb }, spoils } : null;
}

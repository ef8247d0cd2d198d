import type { Source } from '../signal/source.ts';
import { pastSeconds, refineOnset } from './refine-onset.ts';
import type { RiseCandidate } from './rise-candidate.ts';
import type { Stroke } from './stroke.ts';
import { levelPastSeconds, levelSeconds, strokeLevel } from './stroke-level.ts';
import { timbreOf } from './timbre.ts';
import { timeError } from './time-error.ts';

/** Sound read round the coarse time for the onset, s: the past, and how far the onset may lie either side. */
const onsetWindow = { back: pastSeconds + 0.006, ahead: 0.006 };
/** The previous stroke's attack is kept out of the sound from which its tail is predicted, s. */
const attackSeconds = 0.008;
/** No level is known better than this, dB: where samples fall within an attack. */
const leastLevelSe = 0.01;

/**
 * Measures the stroke at a rise near `coarse` (s), `framesAlone` frames before the next rise and after one at
 * `previousTime` (s): exact time, level with the previous stroke's tail taken off, timbre.
 */
export function measureStroke(
  source: Source,
  rise: RiseCandidate,
  coarse: number,
  previousTime: number,
  framesAlone: number,
): Stroke {
  const onset = onsetNear(source, coarse);
  return {
    ...onset,
    ...levelAt(source, onset, previousTime),
    sound: 'pad',
    evidence: rise.evidence,
    timbre: timbreOf(rise, framesAlone),
  };
}

/** Exact time of the attack within a few milliseconds of `coarse`, s. */
export function onsetNear(source: Source, coarse: number): Pick<Stroke, 'time' | 'timeSe'> {
  const rate = source.sampleRate;
  const from = Math.round((coarse - onsetWindow.back) * rate);
  const to = Math.round((coarse + onsetWindow.ahead) * rate);
  const onset = refineOnset(source.read(0, from, to), rate, coarse * rate - from);
  return { time: from / rate + onset.time, timeSe: timeError(onset, rate) };
}

/** Level of the stroke whose onset is known so well, the tail of the one at `previousTime` (s) taken off. */
export function levelAt(
  source: Source,
  { time, timeSe }: Pick<Stroke, 'time' | 'timeSe'>,
  previousTime: number,
): Pick<Stroke, 'levelDb' | 'levelSe'> {
  const rate = source.sampleRate;
  const from = Math.round((time - levelPastSeconds) * rate);
  const to = Math.round((time + levelSeconds + 0.004) * rate);
  const pastFrom = Math.max(0.0007 * rate, (previousTime + attackSeconds) * rate - from);
  const level = strokeLevel(source.read(0, from, to), rate, time * rate - from, pastFrom);
  const levelSe = Math.hypot(level.levelSe, level.slope * timeSe, leastLevelSe);
  return { levelDb: level.levelDb, levelSe };
}

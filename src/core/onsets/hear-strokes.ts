import { bandLayout } from '../signal/band-layout.ts';
import type { Source } from '../signal/source.ts';
import { pastSeconds, refineOnset } from './refine-onset.ts';
import { type RiseCandidate, riseCandidates } from './rise-candidates.ts';
import type { Hearing, Stroke } from './stroke.ts';
import { levelPastSeconds, levelPeakSeconds, strokeLevel } from './stroke-level.ts';

/** Finds the strokes of a recording, their times and levels. */
export function hearStrokes(source: Source, threshold = 12): Hearing {
  const channel = 0;
  const rises = riseCandidates(source, channel);
  const sounds: Stroke[] = [];
  let previous = Number.NEGATIVE_INFINITY;
  for (const rise of rises) {
    if (rise.evidence < threshold) continue;
    const stroke = measureStroke(source, channel, rise, previous);
    if (stroke.time - previous < 0.012) continue;
    sounds.push(stroke);
    previous = stroke.time;
  }
  return { sounds, noiseFloorDb: -90, click: null };
}

function measureStroke(source: Source, channel: number, rise: RiseCandidate, previous: number): Stroke {
  const rate = source.sampleRate;
  const layout = bandLayout(rate);
  const coarse = (rise.frame * rate) / layout.frameRate;
  const back = Math.ceil((pastSeconds + 0.006) * rate);
  const ahead = Math.ceil(0.006 * rate);
  const from = Math.round(coarse) - back;
  const onset = refineOnset(source.read(channel, from, from + back + ahead), rate, coarse - from);
  const time = from / rate + onset.time;
  const levelBack = Math.ceil(levelPastSeconds * rate) & ~7;
  const levelFrom = Math.round(time * rate) - levelBack;
  const window = source.read(channel, levelFrom, levelFrom + levelBack + Math.ceil((levelPeakSeconds + 0.004) * rate));
  const pastFrom = Math.max(32, Math.round((previous + 0.008) * rate) - levelFrom);
  const level = strokeLevel(window, rate, time * rate - levelFrom, pastFrom);
  return {
    time,
    timeSe: onset.curvatureSe,
    levelDb: level.levelDb,
    levelSe: 0.1,
    sound: 'pad',
    evidence: rise.evidence,
    timbre: [],
  };
}

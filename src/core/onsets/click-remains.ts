import { soundLead } from '../click/click-seed.ts';
import type { ClickVoice } from '../click/find-clicks.ts';
import { firstAtLeast } from '../stats/first-at-least.ts';
import type { Stroke } from './stroke.ts';
import { levelSeconds } from './stroke-level.ts';

/**
 * Where a click was taken off, what is less than the click's own sound there by so many dB is what is left of it; `oftenFrom`
 * clicks make a sound that was heard often.
 */
const remainsDb = { often: 26, seams: 20, seldom: 14, oftenFrom: 4 };
const seamSeconds = 0.04;

/**
 * Tells the remains of a subtracted click from strokes: they lie in its sound and well under it. Where the click was
 * never heard alone, its sound has seams, and remains may lie as far from it as the strokes that were in the way.
 */
export function clickRemains(
  { sound, times, learnedFrom, heardAlone }: ClickVoice,
  rate: number,
): (stroke: Stroke) => boolean {
  const often = learnedFrom >= remainsDb.oftenFrom;
  const under = often ? (heardAlone ? remainsDb.often : remainsDb.seams) : remainsDb.seldom;
  const window = Math.round(levelSeconds * rate);
  const back = heardAlone ? 0 : Math.round(seamSeconds * rate);
  const power = new Float64Array(sound.length + 1);
  for (let i = 0; i < sound.length; i++) power[i + 1] = power[i]! + sound[i]! ** 2;
  const starts = times.map((click) => click - soundLead);
  return ({ time, levelDb }) => {
    const before = times[firstAtLeast(starts, time + levelSeconds) - 1];
    if (before === undefined) return false;
    const from = Math.round((time - before + soundLead) * rate);
    if (from >= sound.length + back) return false;
    const energy = power[Math.min(sound.length, from + window)]! - power[Math.max(0, from - back)]!;
    return levelDb < 10 * Math.log10((2 * energy) / window + 1e-14) - under;
  };
}

import { mad, madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import type { PathStep } from './find-path.ts';
import { boundSpread, type LevelModel, separated } from './level-evidence.ts';
import type { MainSlots } from './main-slots.ts';
import type { ThinStrokes } from './thin-strokes.ts';

/**
 * Intervals whose logarithms differ by more aren't even company; fewer strokes in it tell too little (our judgement).
 */
const even = 0.35;
const fewestEven = 12;
/** Fewest accents and taps that tell their levels (our judgement). */
const fewest = 4;

/** Levels of strokes in even company: what stands alone or in a heap is talk rather than playing. */
export const evenLevels = (times: Float64Array, levels: Float64Array, { kept }: ThinStrokes): number[] => {
  const among: number[] = [];
  for (let i = 1; i + 1 < kept.length; i++) {
    const before = times[kept[i]!]! - times[kept[i - 1]!]!;
    const after = times[kept[i + 1]!]! - times[kept[i]!]!;
    if (Math.abs(Math.log(after / before)) < even) among.push(levels[kept[i]!]!);
  }
  return among.length >= fewestEven ? among : [...levels];
};

/** Levels by what a path took each stroke for; null where they can't be told apart. */
export const levelsOnPath = (
  path: readonly PathStep[],
  main: MainSlots,
  levels: Float64Array,
  share: number,
): LevelModel | null => {
  const accents = path.filter((step) => main.accent[step.main] === 1).map((step) => levels[step.stroke]!);
  const taps = path.filter((step) => main.accent[step.main] === 0).map((step) => levels[step.stroke]!);
  if (accents.length < fewest || taps.length < fewest) return null;
  const model: LevelModel = {
    accentDb: median(accents),
    tapDb: median(taps),
    accentSpreadDb: boundSpread(madToSd * mad(accents)),
    tapSpreadDb: boundSpread(madToSd * mad(taps)),
    accentShare: share,
  };
  return separated(model) ? model : null;
};

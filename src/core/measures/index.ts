import type { MeasureResult } from '../result/take-result.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { accentBend } from './accent-bend.ts';
import { accentBendShare } from './accent-bend-share.ts';
import { accentMatch } from './accent-match.ts';
import { accentSpread } from './accent-spread.ts';
import { accentToTapRatio } from './accent-to-tap-ratio.ts';
import { addedAccents } from './added-accents.ts';
import { afterAccentLeak } from './after-accent-leak.ts';
import { beforeAccentLift } from './before-accent-lift.ts';
import { clockSpread } from './clock-spread.ts';
import { doubled } from './doubled.ts';
import { extra } from './extra.ts';
import { graceNotes } from './grace-notes.ts';
import { handChangeGap } from './hand-change-gap.ts';
import { handLevel } from './hand-level.ts';
import { handOffset } from './hand-offset.ts';
import { handOffsetShare } from './hand-offset-share.ts';
import { ioiEvenness } from './ioi-evenness.ts';
import { lagOne } from './lag-one.ts';
import { lostAccents } from './lost-accents.ts';
import type { Measure } from './measure.ts';
import { missed } from './missed.ts';
import { missedAndExtra } from './missed-and-extra.ts';
import { motorSpread } from './motor-spread.ts';
import { movedAccents } from './moved-accents.ts';
import { npvi } from './npvi.ts';
import { offset } from './offset.ts';
import { measureWithParts, partsOf } from './parts-of-measure.ts';
import type { Performance } from './performance.ts';
import { placement } from './placement.ts';
import { placementShare } from './placement-share.ts';
import { ratioTrend } from './ratio-trend.ts';
import { reboundDecay } from './rebound-decay.ts';
import { secondAccent } from './second-accent.ts';
import { separation } from './separation.ts';
import { silentWander } from './silent-wander.ts';
import { strayStrokes } from './stray-strokes.ts';
import { tapCeiling } from './tap-ceiling.ts';
import { tapLevelTrend } from './tap-level-trend.ts';
import { tapSpread } from './tap-spread.ts';
import { tempoChange } from './tempo-change.ts';
import { tempoError } from './tempo-error.ts';
import { timingSpread } from './timing-spread.ts';
import { timingSpreadShare } from './timing-spread-share.ts';
import { timingSpreadTrend } from './timing-spread-trend.ts';
import { turnedAccents } from './turned-accents.ts';
import { wander } from './wander.ts';

/** Everything that is measured about a take. */
export const measures: readonly Measure[] = [
  timingSpread,
  timingSpreadShare,
  ioiEvenness,
  strayStrokes,
  placement,
  placementShare,
  accentBend,
  accentBendShare,
  handOffset,
  handOffsetShare,
  handChangeGap,
  offset,
  wander,
  silentWander,
  clockSpread,
  motorSpread,
  tempoError,
  tempoChange,
  timingSpreadTrend,
  accentToTapRatio,
  separation,
  tapCeiling,
  tapSpread,
  accentSpread,
  accentMatch,
  secondAccent,
  afterAccentLeak,
  beforeAccentLift,
  reboundDecay,
  handLevel,
  tapLevelTrend,
  ratioTrend,
  lostAccents,
  addedAccents,
  movedAccents,
  turnedAccents,
  graceNotes,
  missed,
  extra,
  doubled,
  missedAndExtra,
  npvi,
  lagOne,
];

/** Every measure of a take, in the order of the list, the whole take before its parts. */
export function measureTake(performance: Performance, tell?: WorkTold): MeasureResult[] {
  const parts = partsOf(performance);
  return measures.flatMap((measure, i) => {
    tell?.('measuring', i / measures.length);
    return measureWithParts(measure, performance, parts);
  });
}

import { accentsAndTapsOverlap } from './accents-and-taps-overlap.ts';
import { accentsLost } from './accents-lost.ts';
import { accentsTurnedRound } from './accents-turned-round.ts';
import { bendAtAccent } from './bend-at-accent.ts';
import { fadesAtTheEnd } from './fades-at-the-end.ts';
import type { AdviceRule } from './finding.ts';
import { handsApartInRatio } from './hands-apart-in-ratio.ts';
import { handsApartInTime } from './hands-apart-in-time.ts';
import { loudAfterAccent } from './loud-after-accent.ts';
import { loudTaps } from './loud-taps.ts';
import { missedOrExtraStrokes } from './missed-or-extra-strokes.ts';
import { movingTempo } from './moving-tempo.ts';
import { otherTempo } from './other-tempo.ts';
import { partialOffPlace } from './partial-off-place.ts';
import { unevenAccents } from './uneven-accents.ts';
import { unevenTaps } from './uneven-taps.ts';
import { unevenTiming } from './uneven-timing.ts';
import { wideContrast } from './wide-contrast.ts';

/** Every rule, in the order that decides between findings that cost the same. */
export const adviceRules: readonly AdviceRule[] = [
  accentsTurnedRound,
  fadesAtTheEnd,
  accentsLost,
  missedOrExtraStrokes,
  loudTaps,
  loudAfterAccent,
  unevenTiming,
  partialOffPlace,
  bendAtAccent,
  handsApartInTime,
  handsApartInRatio,
  unevenTaps,
  unevenAccents,
  accentsAndTapsOverlap,
  movingTempo,
  otherTempo,
  wideContrast,
];

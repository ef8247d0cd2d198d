import type { Scope } from '../result/take-result.ts';
import { median } from '../stats/median.ts';
import { beatOf } from './beat-of.ts';
import { inScopes } from './in-scopes.ts';
import { accentsAndTaps, levelsOf } from './level-classes.ts';
import { levelsRefusal } from './levels-refusal.ts';
import { defineMeasure, type Part } from './measure.ts';
import { placeOfStroke } from './part-of-take.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { scopesOf } from './scopes.ts';
import { type BeatCount, shareInterval, shareOutcome } from './share-outcome.ts';
import { worstStrokes } from './worst-strokes.ts';

/** How far below the middle accent a tap should stay where the sheet doesn't say, dB: our judgement. */
const usualRatioDb = 8;

/** Share of taps that come too near the accents. */
export const tapCeiling = defineMeasure(
  {
    id: 'tap-ceiling',
    title: 'Taps too loud',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand'],
    describes:
      'Share of taps louder than the middle accent less the ratio asked for (8 dB unless the sheet sets a band).',
    formula: '100 · taps louder than (median accent − wanted ratio) / taps',
    interval: shareInterval,
    reading:
      'Near zero: the taps stay low. High: listen to the strokes it points at; often they stand beside accents, or in one hand.',
    limits: [
      'A tap just over the bound counts like one far over it.',
      'Where the sheet sets no band the bound is 8 dB, our choice.',
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-accents-or-taps'],
    source: 'Wilson 1927 with a design effect for clusters of loud taps; 8 dB: our judgement.',
  },
  (performance) => {
    const { accents, taps } = accentsAndTaps(performance.strokes);
    const accentSlots = performance.asked.filter((slot) => !slot.grace && slot.accent).length;
    const tapSlots = performance.asked.filter((slot) => !slot.grace && !slot.accent).length;
    const refusal = levelsRefusal(
      { accents: accents.length, taps: taps.length },
      { accents: accentSlots, taps: tapSlots },
    );
    if (refusal) return [{ scope: {}, outcome: refusal }];
    const middle = median(levelsOf(accents));
    const above = ({ slot, levelDb }: PlayedStroke) =>
      levelDb - middle + (performance.sheet.lines[slot.line]!.ratioBand?.minDb ?? usualRatioDb);
    const partOf = (scope: Scope, own: readonly PlayedStroke[]): Part => {
      const lack = levelsRefusal(
        { accents: accents.length, taps: own.length },
        { accents: accentSlots, taps: tapSlots },
      );
      if (lack) return { scope, outcome: lack };
      const beats = new Map<string, BeatCount>();
      for (const tap of own) {
        const { hits, of } = beats.get(beatOf(tap)) ?? { hits: 0, of: 0 };
        beats.set(beatOf(tap), { hits: hits + (above(tap) > 0 ? 1 : 0), of: of + 1 });
      }
      return { scope, outcome: shareOutcome([...beats.values()], own.length, worstStrokes(own, above)) };
    };
    const parts = (['line', 'partial'] as const).flatMap((kind) => {
      const scopes = scopesOf(performance, kind);
      const own = inScopes(scopes, taps, placeOfStroke);
      return scopes.flatMap((scope, i) => (own[i]!.length > 0 ? [partOf(scope, own[i]!)] : []));
    });
    return [partOf({}, taps), ...parts];
  },
);

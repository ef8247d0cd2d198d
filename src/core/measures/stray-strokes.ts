import { beatOf } from './beat-of.ts';
import { defineMeasure } from './measure.ts';
import { type BeatCount, shareInterval, shareOutcome } from './share-outcome.ts';
import { timingOrReason } from './timing-or-reason.ts';
import { mostPointedAt } from './worst-strokes.ts';

/** Strokes left out of timing figures because they lie too far off; shown so that none is hidden. */
export const strayStrokes = defineMeasure(
  {
    id: 'stray-strokes',
    title: 'Strokes far off',
    unit: '%',
    better: 'low',
    describes:
      'Strokes so far from the tempo of the moment, 3.5 times the usual scatter, that timing figures leave them out.',
    formula:
      '100 · strays / strokes; stray: more than 3.5 robust standard deviations from local tempo and habits, by the loosest of take, line, repeat, hand and partial that it belongs to (24 strokes or more)',
    interval: shareInterval,
    reading:
      'Near zero: timing figures speak for all strokes. High: something broke now and then; listen to those strokes first, before working on the spread.',
    limits: [
      "The bound of 3.5 is a choice; a steady player's mild slip counts, a restless player's may not.",
      "Of several that lie close together some may stay hidden, since neighbours bend each other's line.",
    ],
    reasons: ['too-few-strokes', 'too-broken-up'],
    source: 'Rejection at 3.5 robust standard deviations: our judgement; Wilson 1927 with a design effect.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { strokes } = performance;
    const strays = new Set(found.timing.strays);
    const beats = new Map<string, BeatCount>();
    strokes.forEach((stroke, i) => {
      const { hits, of } = beats.get(beatOf(stroke)) ?? { hits: 0, of: 0 };
      beats.set(beatOf(stroke), { hits: hits + (strays.has(i) ? 1 : 0), of: of + 1 });
    });
    const pointsAt = found.timing.strays.map((i) => strokes[i]!.stroke).slice(0, mostPointedAt);
    return [{ scope: {}, outcome: shareOutcome([...beats.values()], strokes.length, pointsAt) }];
  },
);

import { beatOfSlot } from './beat-of.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import { type BeatCount, shareInterval, shareOutcome } from './share-outcome.ts';
import { mostPointedAt } from './worst-strokes.ts';

/** Grace notes below which a share of them isn't told (our judgement). */
const fewestGraces = 8;

/** Share of the written grace notes that were heard. */
export const graceNotes = defineMeasure(
  {
    id: 'grace-notes',
    title: 'Grace notes heard',
    unit: '%',
    better: 'high',
    alsoBy: ['repeat'],
    describes:
      'Grace notes heard just before their stroke, as a share of those written. A grace note that melts into its stroke counts as not heard.',
    formula: '100 · grace notes heard / grace notes written',
    interval: shareInterval,
    reading:
      'Near 100 %: flams and drags are open. Low: the grace note melts into its stroke; play it a little earlier and softer.',
    limits: ['A very tight flam sounds as one stroke and counts as not heard.'],
    reasons: ['no-grace-notes', 'too-few-strokes'],
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  ({ slots, asked, alignment, strokes }) => {
    if (asked.every((slot) => !slot.grace)) return [{ scope: {}, outcome: notApplicable('no-grace-notes') }];
    const heard = new Set(
      alignment.matches
        .filter((match) => alignment.segments[match.segment]!.state === 'graded')
        .map((match) => match.slot),
    );
    const mainStroke = new Map(strokes.map((s) => [s.slot.index, s.stroke]));
    const own = new Set(asked.map((slot) => slot.index));
    const beats = new Map<string, BeatCount>();
    const missing: number[] = [];
    const seen = new Set<number>();
    for (const { firstSlot, lastSlot, state } of alignment.segments) {
      if (state !== 'graded') continue;
      for (let at = firstSlot; at <= lastSlot; at++) {
        const slot = slots[at]!;
        if (!slot.grace || seen.has(at) || !own.has(at)) continue;
        seen.add(at);
        const key = beatOfSlot(slot);
        const { hits, of } = beats.get(key) ?? { hits: 0, of: 0 };
        beats.set(key, { hits: hits + (heard.has(at) ? 1 : 0), of: of + 1 });
        if (heard.has(at)) continue;
        let main = at;
        while (slots[main]?.grace) main++;
        const stroke = mainStroke.get(main);
        if (stroke !== undefined) missing.push(stroke);
      }
    }
    if (seen.size < fewestGraces) {
      const facts = { strokes: seen.size, needed: fewestGraces };
      return [{ scope: {}, outcome: notMeasurable('too-few-strokes', facts) }];
    }
    const pointsAt = [...new Set(missing)].slice(0, mostPointedAt);
    return [{ scope: {}, outcome: shareOutcome([...beats.values()], seen.size, pointsAt) }];
  },
);

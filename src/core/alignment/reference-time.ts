import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { HeardClick, Stroke } from '../onsets/stroke.ts';
import { median } from '../stats/median.ts';
import type { Alignment, ReferenceKind, Segment } from './alignment.ts';
import { circularMedian } from './circular-median.ts';
import { clicksOnBeat } from './click-phase.ts';
import { placeAmong, soundsAt, timeOfPlace } from './click-places.ts';

interface ReferenceQuestion {
  readonly alignment: Alignment;
  readonly slots: readonly Slot[];
  readonly strokes: readonly Stroke[];
  readonly sheet: Sheet;
  readonly click: HeardClick | null;
}

/** A main stroke of a segment: its place in the list of matches, its beat within the segment, its onset (s). */
interface OnBeat {
  readonly match: number;
  readonly beat: number;
  readonly time: number;
}

const isClick = (kind: ReferenceKind): kind is 'played-click' | 'heard-click' =>
  kind === 'played-click' || kind === 'heard-click';

const strokesOf = ({ alignment, slots, strokes }: ReferenceQuestion, index: number): OnBeat[] => {
  const first = slots[alignment.segments[index]!.firstSlot]!;
  return alignment.matches.flatMap(({ slot, stroke, segment }, match) => {
    const { beatTime, grace } = slots[slot]!;
    if (segment !== index || grace) return [];
    return [{ match, beat: beatTime - first.beatTime + first.position, time: strokes[stroke]!.time }];
  });
};

/** How a segment lies on the clicks: clicks per beat, and the place of its beat 0 among them, to a partial. */
const onClicks = (
  { slots }: ReferenceQuestion,
  click: HeardClick,
  segment: Segment,
  played: readonly OnBeat[],
): { readonly ratio: number; readonly place: number; readonly partial: number } | null => {
  if (played.length === 0) return null;
  const ratio = clicksOnBeat(click, segment.period, played[Math.floor(played.length / 2)]!.time);
  if (ratio === null) return null;
  const partial = ratio / slots[segment.firstSlot]!.divisions;
  const places = played.map(({ beat, time }) => placeAmong(click, time) - beat * ratio);
  return { ratio, place: Math.round(circularMedian(places) / partial) * partial, partial };
};

/**
 * When the click itself asked for each match's stroke, s, in the order of `alignment.matches`; null for grace notes,
 * for segments that don't lie on a click, and where the click is silent. A segment's phase is taken to the nearest partial, so that a run
 * that slipped by a partial is held against that partial.
 *
 * @example clickTimes({ alignment, slots, strokes, sheet, click: null }) // null for every match
 */
const clickTimes = (question: ReferenceQuestion): (number | null)[] => {
  const { alignment, click } = question;
  const due: (number | null)[] = alignment.matches.map(() => null);
  if (click === null || !isClick(alignment.reference)) return due;
  alignment.segments.forEach((segment, index) => {
    const played = strokesOf(question, index).filter(({ time }) => soundsAt(click, time));
    const grid = onClicks(question, click, segment, played);
    if (grid === null) return;
    for (const { match, beat, time } of played) {
      const place = beat * grid.ratio + grid.place;
      due[match] = timeOfPlace(click, place + Math.round(placeAmong(click, time) - place));
    }
  });
  return due;
};

/**
 * When each match's stroke was due, s, in the order of `alignment.matches`; null for grace notes: by the click where
 * there is one, otherwise by the asked tempo with the phase fitted (median), or by the segment's own line.
 *
 * @example dueTimes({ alignment, slots, strokes, sheet, click: null })[0] // → seconds
 */
export const dueTimes = (question: ReferenceQuestion): (number | null)[] => {
  const { alignment, slots, sheet } = question;
  const due = clickTimes(question);
  alignment.segments.forEach((segment, index) => {
    const played = strokesOf(question, index).filter(({ match }) => due[match] === null);
    if (played.length === 0) return;
    const bpm = sheet.lines[slots[segment.firstSlot]!.line]?.bpm ?? null;
    const asked = alignment.reference === 'asked-tempo' && bpm !== null;
    const period = asked ? 60 / bpm : segment.period;
    const origin = asked ? median(played.map(({ beat, time }) => time - period * beat)) : segment.origin;
    for (const { match, beat } of played) due[match] = origin + period * beat;
  });
  return due;
};

/** Strokes held against a click: the only reference that can tell playing ahead of it from playing behind. */
interface AgainstClick {
  readonly kind: 'played-click' | 'heard-click';
  /** Onset less the click's own time, s, negative = ahead, by stroke; strokes that no click asked for are left out. */
  readonly asynchrony: ReadonlyMap<number, number>;
  /** Standard error that all asynchronies share, s: that of the measured delay of a played click; 0 for a heard one. */
  readonly sharedSe: number;
}

/**
 * Strokes held against a tempo whose phase came from the strokes themselves: an offset would be nought by definition.
 */
interface AgainstTempo {
  readonly kind: 'asked-tempo' | 'fitted-tempo';
}

export type Reference = AgainstClick | AgainstTempo;

/**
 * What a take's strokes are held against. Only the kinds with a click carry asynchronies.
 *
 * @example referenceOf({ alignment, slots, strokes, sheet, click: null }).kind // 'asked-tempo'
 */
export const referenceOf = (question: ReferenceQuestion): Reference => {
  const { alignment, strokes } = question;
  const { reference: kind } = alignment;
  if (!isClick(kind)) return { kind };
  const due = clickTimes(question);
  const asynchrony = alignment.matches.flatMap(({ stroke }, match) =>
    due[match] === null ? [] : [[stroke, strokes[stroke]!.time - due[match]!] as const],
  );
  return { kind, asynchrony: new Map(asynchrony), sharedSe: question.click?.played?.delaySe ?? 0 };
};

/**
 * For each segment by how many partials its beats lie off the clicks, negative = early: where the beat turned round
 * against the click, or a partial was dropped or put in. Zero for playing on the beat; null without a click
 * that falls on each beat once or less, where it can't be told.
 *
 * @example partialsOffClick({ alignment, slots, strokes, sheet, click })[0] // → 0
 */
export const partialsOffClick = (question: ReferenceQuestion): (number | null)[] => {
  const { alignment, click } = question;
  return alignment.segments.map((segment, index) => {
    if (click === null || !isClick(alignment.reference)) return null;
    const played = strokesOf(question, index).filter(({ time }) => soundsAt(click, time));
    const grid = onClicks(question, click, segment, played);
    if (grid === null || grid.ratio > 1) return null;
    const beats = grid.place / grid.ratio;
    return Math.round(((beats - Math.round(beats)) * grid.ratio) / grid.partial) + 0;
  });
};

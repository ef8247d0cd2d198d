import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { HeardClick, Stroke } from '../onsets/stroke.ts';
import { median } from '../stats/median.ts';
import type { Alignment, Match } from './alignment.ts';
import { clicksOnBeat } from './click-phase.ts';

export interface ReferenceQuestion {
  readonly alignment: Alignment;
  readonly slots: readonly Slot[];
  readonly strokes: readonly Stroke[];
  readonly sheet: Sheet;
  readonly click: HeardClick | null;
}

/** Place of a time among the clicks: 2.25 is a quarter of the way from the third click to the fourth. */
const placeAmong = ({ times, period }: HeardClick, time: number): number => {
  const last = times.length - 1;
  if (time <= times[0]!) return (time - times[0]!) / period;
  if (time >= times[last]!) return last + (time - times[last]!) / period;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle;
  }
  return low + (time - times[low]!) / (times[high]! - times[low]!);
};

/** Time of a place among the clicks, s; the inverse of `placeAmong`. */
const timeOfPlace = ({ times, period }: HeardClick, place: number): number => {
  const last = times.length - 1;
  if (place <= 0) return times[0]! + place * period;
  if (place >= last) return times[last]! + (place - last) * period;
  const low = Math.floor(place);
  return times[low]! + (place - low) * (times[low + 1]! - times[low]!);
};

/** Middle of values that only count up to whole numbers, between −1/2 and 1/2 of the first guess. */
const circularMedian = (values: readonly number[]): number => {
  let sine = 0;
  let cosine = 0;
  for (const value of values) {
    sine += Math.sin(2 * Math.PI * value);
    cosine += Math.cos(2 * Math.PI * value);
  }
  const guess = Math.atan2(sine, cosine) / (2 * Math.PI);
  return guess + median(values.map((value) => value - guess - Math.round(value - guess)));
};

/**
 * When each match's stroke was due, s, in the order of `alignment.matches`; null for grace notes. With a heard
 * click it is the click's own grid: a segment's phase is taken to the nearest partial, so that a run that slipped
 * by a partial is held against that partial. Otherwise the asked tempo with the phase fitted (median), or
 * the segment's own line.
 *
 * @example dueTimes({ alignment, slots, strokes, sheet, click: null })[0] // → seconds
 */
export const dueTimes = ({
  alignment,
  slots,
  strokes,
  sheet,
  click,
}: ReferenceQuestion): (number | null)[] => {
  const due: (number | null)[] = alignment.matches.map(() => null);
  alignment.segments.forEach((segment, index) => {
    const first = slots[segment.firstSlot]!;
    const beatOf = ({ slot }: Match): number => slots[slot]!.beatTime - first.beatTime + first.position;
    const mine = alignment.matches.flatMap((match, m) =>
      match.segment === index && !slots[match.slot]!.grace
        ? [{ match, m, time: strokes[match.stroke]!.time }]
        : [],
    );
    if (mine.length === 0) return;
    const ratio = alignment.reference === 'heard-click' && click ? clicksOnBeat(click, segment.period) : null;
    if (ratio !== null && click) {
      const places = mine.map(({ match, time }) => placeAmong(click, time) - beatOf(match) * ratio);
      const partial = ratio / first.divisions;
      const phase = Math.round(circularMedian(places) / partial) * partial;
      mine.forEach(({ match, m }, i) => {
        const whole = Math.round(places[i]! - phase);
        due[m] = timeOfPlace(click, beatOf(match) * ratio + phase + whole);
      });
      return;
    }
    const bpm = sheet.lines[first.line]?.bpm ?? null;
    const asked = alignment.reference === 'asked-tempo' && bpm !== null;
    const period = asked ? 60 / bpm : segment.period;
    const origin = asked
      ? median(mine.map(({ match, time }) => time - period * beatOf(match)))
      : segment.origin;
    for (const { match, m } of mine) due[m] = origin + period * beatOf(match);
  });
  return due;
};

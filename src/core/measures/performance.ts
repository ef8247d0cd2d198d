import type { Alignment } from '../alignment/alignment.ts';
import { partialsOffClick, type Reference, referenceOf } from '../alignment/reference-time.ts';
import type { SilentStretch } from '../click-track/silent-stretches.ts';
import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import { otherHand } from '../exercise/swap-hands.ts';
import type { HeardClick, Stroke } from '../onsets/stroke.ts';
import { leastShareTold, slotsWithoutHand } from './hands-told.ts';
import { type AccentsOrReason, heardAccents } from './heard-accents.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { strokeContexts } from './stroke-context.ts';
import { fitTimingModel, type TimingModel } from './timing-model.ts';

/** What every measure reads: the graded strokes of a take with all that the sheet says of them. */
export interface Performance {
  readonly sheet: Sheet;
  readonly slots: readonly Slot[];
  /** Those of the slots that are asked about: all of them for a whole take. */
  readonly asked: readonly Slot[];
  readonly alignment: Alignment;
  /** What the strokes are held against; only a click lets an offset be worked out. */
  readonly reference: Reference;
  /** Where the click that was played left the player alone, s of the recording. */
  readonly silences: readonly SilentStretch[];
  /** Onsets of all strokes that were aligned, s. */
  readonly times: readonly number[];
  /** Strokes on main slots of graded segments, in order of time; grace notes are left out. */
  readonly strokes: readonly PlayedStroke[];
  /** `not-told` when a missed or doubled stroke leaves the hands of most strokes open. */
  readonly hands: 'as-written' | 'not-told';
  /** What the levels say of the accents. A part of a take keeps what was heard in the whole. */
  readonly accents: AccentsOrReason;
  /** Habits, residuals and local tempo, or null when there are too few strokes for them. */
  readonly timing: TimingModel | null;
}

/** A rest of more beats than this parts two stretches: half the window of the local tempo. */
const longestRestBeats = 2;

/** Gathers a take for its measures. Indices of the alignment refer to `slots` and `strokes`. */
export function performanceOf({
  sheet,
  slots,
  strokes,
  alignment,
  click = null,
  silences = [],
}: {
  readonly sheet: Sheet;
  readonly slots: readonly Slot[];
  readonly strokes: readonly Stroke[];
  readonly alignment: Alignment;
  /** The click heard in the recording. */
  readonly click?: HeardClick | null;
  readonly silences?: readonly SilentStretch[];
}): Performance {
  const times = strokes.map((stroke) => stroke.time);
  const contexts = strokeContexts(slots, sheet);
  const withoutHand = slotsWithoutHand({ slots, times, alignment });
  const played: PlayedStroke[] = [];
  let stretch = -1;
  let start = 0;
  let segmentBefore = -1;
  let slotBefore: Slot | null = null;
  for (const match of alignment.matches) {
    const segment = alignment.segments[match.segment]!;
    const slot = slots[match.slot]!;
    if (segment.state !== 'graded' || slot.grace) continue;
    const continues =
      slotBefore !== null &&
      match.segment === segmentBefore &&
      slot.beatTime > slotBefore.beatTime &&
      slot.beatTime - slotBefore.beatTime <= longestRestBeats &&
      sheet.lines[slot.line]!.bpm === sheet.lines[slotBefore.line]!.bpm;
    if (!continues) {
      stretch += 1;
      start = slot.beatTime;
    }
    segmentBefore = match.segment;
    slotBefore = slot;
    const { time, timeSe, levelDb, levelSe } = strokes[match.stroke]!;
    const { place, handChange } = contexts.get(slot.index)!;
    const doubt = withoutHand.get(slot.index) ?? null;
    const hand = segment.leadSwapped ? otherHand(slot.hand) : slot.hand;
    played.push({
      stroke: match.stroke,
      slot,
      stretch,
      time,
      timeSe,
      levelDb,
      levelSe,
      position: slot.beatTime - start,
      hand: doubt === null ? hand : null,
      doubt,
      place,
      handChange,
    });
  }
  const told = played.filter((stroke) => stroke.hand !== null).length;
  const hands = told >= leastShareTold * played.length ? 'as-written' : 'not-told';
  const held = { alignment, slots, strokes, sheet, click };
  const accents = heardAccents({ alignment, slots, strokes: played, offClick: partialsOffClick(held) });
  const reference = referenceOf(held);
  const timing = fitTimingModel(played);
  return {
    ...{ sheet, slots, asked: slots, alignment, reference, silences },
    ...{ times, strokes: played, hands, accents, timing },
  };
}

import { type AlignQuestion, alignTake } from '../alignment/align-take.ts';
import type { Alignment } from '../alignment/alignment.ts';
import type { Performance } from '../measures/performance.ts';

/** By how much counting must be the tidier for the levels to be overruled: one stroke at either end of the run. */
const fewestGained = 2;

/** Slots without a stroke, those inside a run twice, strokes without a slot, and breaks between runs. */
function loose(alignment: Alignment, { slots }: AlignQuestion): number {
  const { matches, segments, missed, extra, doubled, outside } = alignment;
  const graded = new Set(
    matches.filter(({ segment }) => segments[segment]!.state === 'graded').map(({ slot }) => slot),
  );
  const empty = slots.filter((slot) => !slot.grace && !graded.has(slot.index)).length;
  const unmatched = extra.length + doubled.length + outside.length;
  return empty + missed.length + unmatched + Math.max(0, segments.length - 1);
}

/** The least that can be loose, however the strokes are laid: the surplus of slots or of strokes. */
function fewestLoose({ slots, strokes }: AlignQuestion): number {
  const main = slots.filter(({ grace }) => !grace).length;
  return Math.max(0, main - strokes.length) + Math.max(0, strokes.length - slots.length);
}

/** Whether the accents of some line are turned round from its first beat on. */
function turnedFromStart({ accents, strokes, slots }: Performance): boolean {
  if ('refusal' in accents) return false;
  const first = new Map<number, number>();
  for (const slot of slots) if (!first.has(slot.line)) first.set(slot.line, slot.beatTime);
  return accents.accents.turns.some(({ from }) => {
    const { slot } = strokes[from]!;
    return slot.beatTime - first.get(slot.line)! < 1;
  });
}

/**
 * Whether a recording may have begun in the middle of playing: it has fewer strokes than the sheet, and the first one
 * comes before a beat of silence has passed. Then the pattern itself tells where in it the sound sets in.
 */
function mayHaveBegunLate({ slots, strokes }: AlignQuestion, { segments }: Alignment): boolean {
  const first = strokes.find(({ sound }) => sound === 'pad')!;
  return strokes.length < slots.filter(({ grace }) => !grace).length && first.time < segments[0]!.period;
}

/**
 * The alignment of a take whose accents were played on another partial from the start. Laid by its levels such a take
 * seems to lack a stroke at one end and to have one too many at the other; laid by counting, every stroke has its slot
 * and the accents are turned round, which is what happened. Taken only where both of that is so: otherwise the
 * alignment by levels stands.
 *
 * @example countedAlignment(question, alignTake(question), perform).missed.length // 0
 */
export function countedAlignment(
  question: AlignQuestion,
  byLevels: Alignment,
  perform: (alignment: Alignment) => Performance,
): Alignment {
  const before = loose(byLevels, question);
  const accents = new Set(question.slots.filter((slot) => !slot.grace).map((slot) => slot.accent));
  if (before - fewestLoose(question) < fewestGained || accents.size < 2) return byLevels;
  const levelDb = 0;
  const strokes = question.strokes.map((stroke) => ({ ...stroke, levelDb }));
  // A take that breaks off is counted from the start of the sheet.
  const last = question.slots.filter((slot) => !slot.grace)[strokes.length - 1];
  const slots = last ? question.slots.slice(0, last.index + 1) : question.slots;
  const counted = alignTake({ ...question, slots, strokes });
  // Without levels the phase isn't told; that every stroke finds its slot tells it.
  const { doubt } = counted;
  if (doubt !== null && doubt.code !== 'phase-not-told') return byLevels;
  if (before - loose(counted, question) < fewestGained) return byLevels;
  if (mayHaveBegunLate(question, counted)) return byLevels;
  return turnedFromStart(perform(counted)) ? { ...counted, doubt: byLevels.doubt } : byLevels;
}

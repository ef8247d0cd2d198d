import type { Alignment } from '../alignment/alignment.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Hearing } from '../onsets/stroke.ts';
import type { Reason } from '../result/take-result.ts';

/** Peak under which a recording holds nothing to grade, linear: −66 dBFS. Our judgement. */
const silentPeak = 0.0005;
/** Fewer strokes than this on the exercise's slots are no take: two beats of triplets. Our judgement. */
const fewestOnSlots = 6;

/** Doubts under which figures would speak of something that wasn't played. */
const fatalDoubts: readonly string[] = ['nothing-fits', 'many-unmatched', 'no-slots', 'no-strokes'];

/** Why a take can't be graded, or null. */
export function whyNotGradable({
  peak,
  hearing,
  slots,
  alignment,
}: {
  /** Largest magnitude in the recording. */
  readonly peak: number;
  readonly hearing: Hearing;
  readonly slots: readonly Slot[];
  readonly alignment: Alignment;
}): Reason | null {
  const strokes = hearing.sounds.filter((sound) => sound.sound === 'pad').length;
  const wanted = slots.filter((slot) => !slot.grace).length;
  if (peak < silentPeak) {
    const facts = peak > 0 ? { peakDb: 20 * Math.log10(peak) } : {};
    return { code: 'silent-take', facts };
  }
  if (strokes === 0) return { code: 'no-strokes-heard', facts: { wanted } };
  if (strokes < fewestOnSlots) return { code: 'too-few-strokes-heard', facts: { strokes, wanted } };
  const { doubt } = alignment;
  if (doubt !== null && fatalDoubts.includes(doubt.code))
    return { code: doubt.code, facts: { ...doubt.facts } };
  const graded = alignment.matches.filter(
    ({ segment }) => alignment.segments[segment]!.state === 'graded',
  ).length;
  if (graded < fewestOnSlots) return { code: 'too-few-on-exercise', facts: { strokes, graded, wanted } };
  return null;
}

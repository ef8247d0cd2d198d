import type { Sheet } from './exercise/sheet.ts';
import { type GradeOptions, gradeHearing } from './grading/grade-hearing.ts';
import { noteHearing, type PadNote, velocityDb } from './onsets/note-hearing.ts';
import type { TakeResult } from './result/take-result.ts';
import { notePulses } from './signal/note-pulses.ts';
import type { Source } from './signal/source.ts';

/** What an electronic pad sent during a take. */
export interface NoteTake {
  readonly notes: readonly PadNote[];
  /** s */
  readonly duration: number;
}

/** A short tone for every note, so that such a take can be drawn and played. */
export function soundOfNotes({ notes, duration }: NoteTake): Source {
  const pulses = notes
    .toSorted((a, b) => a.time - b.time)
    .map(({ time, velocity }) => ({ time, peak: 10 ** (velocityDb(velocity) / 20) }));
  return notePulses(pulses, duration + 1);
}

/**
 * Grades the notes of an electronic pad as a take of its own: nothing has to be found, times are as exact as the file's
 * steps, and levels stand on the scale of velocities, which the result says, since they don't compare with dBFS.
 *
 * @example gradeNotes({ notes, duration: 40 }, sheet).recording.levels // 'velocity'
 */
export function gradeNotes(take: NoteTake, sheet: Sheet, options: GradeOptions = {}): TakeResult {
  const warnings = [...(options.warnings ?? []), { code: 'levels-are-velocities', facts: {} }];
  const result = gradeHearing(soundOfNotes(take), noteHearing(take.notes), sheet, {
    ...options,
    warnings,
    check: false,
  });
  return { ...result, recording: { ...result.recording, levels: 'velocity' } };
}

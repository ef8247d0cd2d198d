import type { Sheet } from './exercise/sheet.ts';
import { clicksToFind } from './grading/clicks-to-find.ts';
import { type GradeOptions, gradeHearing } from './grading/grade-hearing.ts';
import { hearStrokes } from './onsets/hear-strokes.ts';
import type { TakeResult } from './result/take-result.ts';
import type { Source } from './signal/source.ts';

export type { GradeOptions } from './grading/grade-hearing.ts';

/**
 * Grades a recorded take: finds its strokes, lays them on the sheet, measures, scores and advises. A take that can't
 * be graded comes back with the reason and without measures. Time and memory: linear in the recording's length, memory
 * bounded but for what is found in it.
 *
 * @example gradeTake(source, sheet, { name: 'monday.wav' }).grading // { state: 'graded' }
 */
export function gradeTake(source: Source, sheet: Sheet, options: GradeOptions = {}): TakeResult {
  return gradeHearing(
    source,
    hearStrokes(source, options.tell, clicksToFind(options.playedClick)),
    sheet,
    options,
  );
}

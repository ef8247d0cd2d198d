import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { gradeHearing } from '../../src/core/grading/grade-hearing.ts';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { isForExport } from '../../src/core/result/names.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { findMeasure } from '../../src/core/scoring/find-measure.ts';
import { memorySource } from './bench-take.ts';
import { movedBy } from './compare-results.ts';

/** A take graded with and without the check of its recording. */
export interface Graded {
  readonly result: TakeResult;
  /** The same without the check, which refuses nothing. */
  readonly plain: TakeResult;
  readonly codes: readonly string[];
}

/** Grades a recording both ways. */
export function gradeBothWays(samples: Float32Array, sampleRate: number, sheet: Sheet): Graded {
  const source = memorySource(samples, sampleRate);
  const hearing = hearStrokes(source);
  const result = gradeHearing(source, hearing, sheet, { name: 'take.wav' });
  const plain = gradeHearing(source, hearing, sheet, { name: 'take.wav', check: false });
  return { result, plain, codes: (result.recording.check ?? []).map(({ code }) => code) };
}

/**
 * Figures of the whole take that are told of the clean recording. Here, if nothing were refused: `wrong`, outside the clean
 * recording's interval, and `gone`, not there for another reason. Of the wrong ones `told` all the same; `inVain`, refused
 * though right.
 */
export function harmDone(clean: TakeResult, { result, plain }: Graded) {
  const harm = { figures: 0, wrong: 0, told: 0, inVain: 0, gone: 0 };
  for (const { id, scope, unit, outcome } of clean.measures) {
    if (outcome.state !== 'measured' || Object.keys(scope).length > 0 || isForExport(id)) continue;
    harm.figures += 1;
    const other = findMeasure(plain.measures, id, scope)?.outcome;
    if (other?.state === 'measured') {
      const moved = Math.abs(movedBy({ id, scope, unit, clean: outcome, other }));
      const isWrong = moved > 1 && Math.abs(other.value - outcome.value) > 1e-6;
      const isTold = findMeasure(result.measures, id, scope)?.outcome.state === 'measured';
      if (isWrong) harm.wrong += 1;
      if (isWrong && isTold) harm.told += 1;
      if (!isWrong && !isTold) harm.inVain += 1;
    } else if (other?.state !== 'not-applicable') harm.gone += 1;
  }
  return harm;
}

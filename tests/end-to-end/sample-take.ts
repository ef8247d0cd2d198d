import { readFileSync } from 'node:fs';
import type { TakeTruth, TruthStroke } from '../../fixtures/generator/take-truth.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import type { Outcome, Scope, TakeResult } from '../../src/core/result/take-result.ts';
import { sampleTakePath } from '../cli/built-program.ts';
import { openedSample } from '../support/opened-sample.ts';

/** A sample take as it was played, and as it is graded. */
export interface GradedSample {
  readonly truth: TakeTruth;
  readonly result: TakeResult;
}

const graded = new Map<string, GradedSample>();

/** Grades a sample take once. */
export function gradedSample(name: string): GradedSample {
  const known = graded.get(name);
  if (known) return known;
  const truth: TakeTruth = JSON.parse(
    readFileSync(sampleTakePath(name).replace(/wav$/, 'truth.json'), 'utf8'),
  );
  const { source, sheet } = openedSample(name);
  const result = gradeTake(source, sheet, { name });
  const sample = { truth, result };
  graded.set(name, sample);
  return sample;
}

/** Strokes of the truth on slots of graded runs. */
export function gradedStrokes({ strokes, segments }: TakeTruth): TruthStroke[] {
  return strokes.filter(
    ({ role, grace, segment }) =>
      role === 'take' && !grace && segment !== null && segments[segment]!.state === 'graded',
  );
}

/** Index of the found stroke nearest to a time. */
export function nearestStroke({ strokes }: TakeResult, time: number): number {
  const distance = strokes.time.map((found) => Math.abs(found - time));
  return distance.indexOf(Math.min(...distance));
}

export function outcomeOf({ measures }: TakeResult, id: string, scope: Scope = {}): Outcome | undefined {
  const same = (other: Scope) => JSON.stringify(other) === JSON.stringify(scope);
  return measures.find((measure) => measure.id === id && same(measure.scope))?.outcome;
}

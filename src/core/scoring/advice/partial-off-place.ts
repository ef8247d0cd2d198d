import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';
import { surestOffset } from './surest-offset.ts';

/** One partial lies before or behind its even place in the beat. Says nothing about a click. */
export const partialOffPlace: AdviceRule = (input) =>
  shortfalls(input, 'placement-share').flatMap(({ outcome, lost }) => {
    const furthest = surestOffset(input.measures, 'placement', (scope) => scope.partial !== undefined);
    if (!furthest) return [];
    const facts = { ...directedFacts(furthest.outcome, ['early', 'late']), partial: furthest.scope.partial! };
    const strokes = furthest.outcome.pointsAt.length > 0 ? furthest.outcome.pointsAt : outcome.pointsAt;
    return [{ code: 'partial-off-place', facts, strokes, lost }];
  });

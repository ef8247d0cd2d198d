import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';
import { surestOffset } from './surest-offset.ts';

/** The rhythm bends before, on or after an accent: a stroke crowds the accent or leaves a gap. */
export const bendAtAccent: AdviceRule = (input) =>
  shortfalls(input, 'accent-bend-share').flatMap(({ outcome, lost }) => {
    const furthest = surestOffset(input.measures, 'accent-bend', (scope) => scope.place !== undefined);
    if (!furthest) return [];
    const facts = { ...directedFacts(furthest.outcome, ['early', 'late']), place: furthest.scope.place! };
    const strokes = furthest.outcome.pointsAt.length > 0 ? furthest.outcome.pointsAt : outcome.pointsAt;
    return [{ code: 'bend-at-accent', facts, strokes, lost }];
  });

import type { TakeResult } from '../core/result/take-result.ts';
import { askedRatio } from './asked-ratio.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { spreadOf } from './spread-of.ts';

/** Level above which a tap comes too near the accents, dB: the middle accent less the least ratio asked for. */
function ceilingOf(result: TakeResult, strokes: readonly GradedStroke[]) {
  const accents = spreadOf(strokes.filter((stroke) => stroke.accent).map((stroke) => stroke.levelDb));
  if (accents === null || accents.count === strokes.length) return null;
  return (stroke: GradedStroke) => accents.middle - askedRatio(result, result.slots.line[stroke.slot]!).minDb;
}

/** The tap ceiling over the take, with a step where it changes; empty without accents or without taps. */
export function tapCeilingPoints(result: TakeResult): { readonly x: number; readonly y: number }[] {
  const strokes = gradedStrokes(result);
  const level = ceilingOf(result, strokes);
  if (level === null) return [];
  const points: { x: number; y: number }[] = [];
  strokes.forEach((stroke, i) => {
    const y = level(stroke);
    const before = points.at(-1);
    if (before !== undefined && before.y !== y) points.push({ x: stroke.time, y: before.y });
    if (before?.y !== y || i === strokes.length - 1) points.push({ x: stroke.time, y });
  });
  return points;
}

/** The taps above the ceiling of their line. */
export function tapsOverCeiling(result: TakeResult): GradedStroke[] {
  const strokes = gradedStrokes(result);
  const level = ceilingOf(result, strokes);
  if (level === null) return [];
  return strokes.filter((stroke) => !stroke.accent && stroke.levelDb > level(stroke));
}

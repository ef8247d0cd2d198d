import { beginRuns, leaveRun, nearlyEnds } from './begin-runs.ts';
import { goOn } from './go-on.ts';
import { openOutside } from './outside.ts';
import type { StepKind } from './paths.ts';
import { prices } from './prices.ts';
import { beam, openSearch, type PathQuestion } from './search.ts';

const toldEvery = 64;

/** One stroke laid on one main slot, and how the path came there. */
export interface PathStep {
  readonly stroke: number;
  /** Index into the main slots. */
  readonly main: number;
  readonly kind: StepKind;
}

/**
 * Lays strokes on slots: the likeliest walk through the sheet that stays in time with the strokes and agrees
 * with their levels, where every missed, extra and doubled stroke, slip, stop, jump and restart has its price.
 * A Viterbi search (Viterbi 1967) over (stroke, slot) in which each surviving path carries its own tempo
 * (per-survivor processing, Raheli, Polydoros & Tzou 1995), cut to a beam. Empty when nothing fits.
 */
export const findPath = (question: PathQuestion): PathStep[] => {
  const search = openSearch(question);
  const { paths, main, strokes, breadth } = search;
  if (strokes === 0 || main.length === 0) return [];
  const outside = openOutside(main.bars.length, paths);
  const slipsTell = question.levels.asAccent.some((value) => value !== 0);
  beginRuns(search, outside, 0);
  for (let j = 0; j < strokes; j++) {
    if (j % toldEvery === 0) question.tell?.('laying', j / strokes);
    outside.pass();
    const floor = Math.max(paths.bestAt(j), outside.score(outside.best())) - beam;
    const nodes = paths.close(j, floor, breadth);
    for (const node of nodes) leaveRun(search, outside, node);
    for (const node of nodes) goOn(search, node, slipsTell);
    paths.followed(nodes);
    if (j + 1 < strokes) beginRuns(search, outside, j + 1);
  }

  const score = (bar: number) => {
    const node = outside.node(bar);
    const early = node >= 0 && !nearlyEnds(main, paths.slot[node]!);
    return outside.score(bar) + (early ? prices.stoppedEarly : 0);
  };
  const best = outside.open.reduce((one, bar) => (score(bar) > score(one) ? bar : one));
  const steps: PathStep[] = [];
  for (let node = outside.node(best); node >= 0; node = paths.before[node]!) {
    steps.push({ stroke: paths.stroke[node]!, main: paths.slot[node]!, kind: paths.kind(node) });
  }
  return steps.reverse();
};

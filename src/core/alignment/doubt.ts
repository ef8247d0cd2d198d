import type { Slot } from '../exercise/slot.ts';
import type { Alignment } from './alignment.ts';
import type { LevelModel } from './level-evidence.ts';
import type { MainSlots } from './main-slots.ts';

/** Shares below which an alignment is doubted (our judgement). */
const leastMatched = 0.6;
const leastInside = 0.25;

/** Whether the written rhythm has a rest, a change of division or a second line, so that its place shows. */
const rhythmTells = (main: MainSlots): boolean => {
  for (let i = 2; i < main.length; i++) {
    const before = main.beat[i - 1]! - main.beat[i - 2]!;
    if (Math.abs(main.beat[i]! - main.beat[i - 1]! - before) > 1e-6) return true;
  }
  return false;
};

/**
 * Why an alignment can't be trusted, or null:
 * `nothing-fits`, `many-unmatched` (most slots of the graded runs have no stroke), `mostly-outside` (most
 * strokes belong to no run), `phase-not-told` (equal strokes, an even rhythm and no click: the first stroke of
 * the run was taken for the first slot).
 */
export const doubtOf = (question: {
  readonly alignment: Alignment;
  readonly slots: readonly Slot[];
  readonly main: MainSlots;
  readonly levels: LevelModel | null;
}): Alignment['doubt'] => {
  const { alignment, slots, main, levels } = question;
  const graded = alignment.segments.filter(({ state }) => state === 'graded');
  const span = graded.reduce((sum, segment) => sum + segment.lastSlot - segment.firstSlot + 1, 0);
  if (span === 0) return { code: 'nothing-fits', facts: { slots: slots.length } };
  const matched = span - alignment.missed.length;
  if (matched < leastMatched * span) return { code: 'many-unmatched', facts: { matched, slots: span } };
  const inside = alignment.matches.length + alignment.extra.length + alignment.doubled.length;
  const all = inside + alignment.outside.length;
  if (inside < leastInside * all) return { code: 'mostly-outside', facts: { inside, strokes: all } };
  const clicked = alignment.reference === 'heard-click' || alignment.reference === 'played-click';
  if (levels === null && !rhythmTells(main) && !clicked) {
    return { code: 'phase-not-told', facts: { strokes: all } };
  }
  return null;
};

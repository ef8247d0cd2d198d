import type { Hand } from '../exercise/sheet.ts';
import type { Scope } from '../result/take-result.ts';
import type { Performance } from './performance.ts';

/** Kinds of parts of a take. */
export type PartKind = 'line' | 'repeat' | 'hand' | 'partial';

/** Strokes below which a repeat isn't a part of its own (our judgement: four triplets). */
const fewestOfRepeat = 12;

const ascending = (values: Iterable<number>): number[] => [...new Set(values)].sort((a, b) => a - b);

/** Both hands where they are told and both play; otherwise none, since one hand is the whole take. */
export function handScopes({ strokes, hands }: Performance): readonly Hand[] {
  const both = (['R', 'L'] as const).filter((hand) => strokes.some((s) => s.hand === hand));
  return hands === 'as-written' && both.length === 2 ? both : [];
}

/** Lines played where there are several, ascending. */
export function lineScopes({ strokes }: Performance): readonly number[] {
  const lines = ascending(strokes.map((s) => s.slot.line));
  return lines.length > 1 ? lines : [];
}

/** Repeats of each line that is played more than once, with enough strokes in them. */
function repeatScopes({ strokes, sheet }: Performance): Scope[] {
  const several = new Set(strokes.map((s) => s.slot.line)).size > 1;
  return sheet.lines.flatMap((_, line) => {
    const counts = new Map<number, number>();
    for (const { slot } of strokes) {
      if (slot.line === line) counts.set(slot.repeat, (counts.get(slot.repeat) ?? 0) + 1);
    }
    return counts.size < 2
      ? []
      : ascending(counts.keys())
          .filter((repeat) => counts.get(repeat)! >= fewestOfRepeat)
          .map((repeat) => (several ? { line, repeat } : { repeat }));
  });
}

function partialScopes({ strokes }: Performance): Scope[] {
  const partials = ascending(strokes.map((s) => s.slot.partial));
  return partials.length > 1 ? partials.map((partial) => ({ partial })) : [];
}

/** The parts of one kind that a take has; none where there is but one, which is the whole take. */
export function scopesOf(take: Performance, kind: PartKind): readonly Scope[] {
  if (kind === 'line') return lineScopes(take).map((line) => ({ line }));
  if (kind === 'repeat') return repeatScopes(take);
  if (kind === 'hand') return handScopes(take).map((hand) => ({ hand }));
  return partialScopes(take);
}

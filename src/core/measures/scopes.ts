import type { Hand } from '../exercise/sheet.ts';
import type { Performance } from './performance.ts';

/** Both hands where they are told and both play; otherwise none, since one hand is the whole take. */
export function handScopes({ strokes, hands }: Performance): readonly Hand[] {
  const both = (['R', 'L'] as const).filter((hand) => strokes.some((s) => s.hand === hand));
  return hands === 'as-written' && both.length === 2 ? both : [];
}

/** Lines played where there are several, ascending. */
export function lineScopes({ strokes }: Performance): readonly number[] {
  const lines = [...new Set(strokes.map((s) => s.slot.line))].sort((a, b) => a - b);
  return lines.length > 1 ? lines : [];
}

import type { TakeResult } from '../../result/take-result.ts';
import { fewestTempos } from './tempo-of-break.ts';

type Line = Pick<TakeResult['sheet']['lines'][number], 'notation' | 'bpm'>;

/**
 * Lines of a sheet that are one exercise at a tempo that rises from line to line, at least four of them, whatever
 * stands between them: their indices, an array for each exercise.
 *
 * @example risingLines([80, 90, 100, 110].map((bpm) => ({ notation: '>RLR', bpm }))) // [[0, 1, 2, 3]]
 */
export function risingLines(lines: readonly Line[]): number[][] {
  const byNotation = new Map<string, number[]>();
  lines.forEach(({ notation, bpm }, i) => {
    if (bpm !== null) byNotation.set(notation, [...(byNotation.get(notation) ?? []), i]);
  });
  return [...byNotation.values()].filter(
    (own) =>
      own.length >= fewestTempos && own.slice(1).every((line, i) => lines[line]!.bpm! > lines[own[i]!]!.bpm!),
  );
}

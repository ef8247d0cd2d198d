import { limits } from './limits.ts';
import type { Sheet, SheetLine } from './sheet.ts';

/** Tempos to go through, beats per minute. */
export interface TempoRise {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** Tempos of a rise: `from`, then a step more each time, as long as it isn't past `to`. */
export function risingTempos({ from, to, step }: TempoRise): number[] {
  const steps = Math.max(0, Math.floor((to - from) / step + 1e-9));
  return Array.from({ length: Math.min(limits.sheetLines, steps + 1) }, (_, i) =>
    Number((from + i * step).toFixed(3)),
  );
}

/**
 * One exercise over and over, each line a step faster than the one before and without a rest between them: a take of it
 * shows up to which tempo it holds.
 *
 * @example risingSheet(line, { from: 80, to: 100, step: 10 }).lines.map(({ bpm }) => bpm) // [80, 90, 100]
 */
export function risingSheet(line: SheetLine, rise: TempoRise): Sheet {
  const lines = risingTempos(rise).map(
    (bpm): SheetLine => ({ ...line, bpm, restBeats: 0, label: `${line.label}, ${bpm}` }),
  );
  return { title: line.label, lines };
}

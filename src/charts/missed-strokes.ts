import type { TakeResult } from '../core/result/take-result.ts';

/** A stroke that was asked for and not played, and about when it would have come. */
interface MissedStroke {
  readonly slot: number;
  /** s */
  readonly time: number;
}

/** The missed strokes of the graded runs, grace notes left out, each placed between its nearest played neighbours. */
export function missedStrokes({ slots, strokes, segments }: TakeResult): MissedStroke[] {
  return segments.flatMap((run) => {
    if (run.state !== 'graded') return [];
    const range = Array.from({ length: run.lastSlot - run.firstSlot + 1 }, (_, i) => run.firstSlot + i);
    const main = range.filter((slot) => !slots.grace[slot]);
    const times = main.map((slot) => {
      const stroke = slots.stroke[slot] ?? null;
      return stroke === null ? null : strokes.time[stroke]!;
    });
    let before = -1;
    return main.flatMap((slot, i) => {
      if (times[i] !== null) before = i;
      if (slots.state[slot] !== 'missed') return [];
      const after = times.findIndex((time, k) => k > i && time !== null);
      const from = before < 0 ? run.from : times[before]!;
      const to = after < 0 ? run.to : times[after]!;
      const start = Math.max(0, before);
      const end = after < 0 ? main.length - 1 : after;
      const share = end === start ? 0 : (i - start) / (end - start);
      return [{ slot, time: from + share * (to - from) }];
    });
  });
}

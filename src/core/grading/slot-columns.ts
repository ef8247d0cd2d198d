import type { Alignment } from '../alignment/alignment.ts';
import type { Slot } from '../exercise/slot.ts';
import { writtenColumns } from '../exercise/written-columns.ts';
import type { TakeResult } from '../result/take-result.ts';

type Columns = TakeResult['slots'];

/** The expected strokes as columns, each with the graded stroke on it, or missed, or never reached. */
export function slotColumns(slots: readonly Slot[], alignment: Alignment): Columns {
  const stroke = slots.map((): number | null => null);
  const state = slots.map((): Columns['state'][number] => 'not-reached');
  for (const match of alignment.matches) {
    if (alignment.segments[match.segment]!.state !== 'graded') continue;
    stroke[match.slot] = match.stroke;
    state[match.slot] = 'played';
  }
  for (const slot of alignment.missed) state[slot] = 'missed';
  return { ...writtenColumns(slots), stroke, state };
}

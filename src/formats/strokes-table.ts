import type { TakeResult } from '../core/result/take-result.ts';
import type { CsvField } from './csv.ts';

/** Heads of the strokes table's columns. Line, repeat, bar, beat and partial count from 1. */
export const strokesTableHead = [
  'time_s',
  'time_se_s',
  'level_dBFS',
  'level_se_dB',
  'role',
  'line',
  'repeat',
  'bar',
  'beat',
  'partial',
  'hand',
  'accent',
  'grace',
  'deviation_ms',
] as const;

const yesNo = (is: boolean) => (is ? 'yes' : 'no');

/** A take's strokes as a table, one a record in order of time, the heads first. What isn't known is left empty. */
export function strokesTable({ strokes, slots }: TakeResult): CsvField[][] {
  const records = strokes.time.map((time, i): CsvField[] => {
    const slot = strokes.slot[i] ?? null;
    const place =
      slot === null
        ? [null, null, null, null, null]
        : [
            slots.line[slot]! + 1,
            slots.repeat[slot]! + 1,
            slots.bar[slot]! + 1,
            slots.beat[slot]! + 1,
            slots.partial[slot]!,
          ];
    return [
      time,
      strokes.timeSe[i]!,
      strokes.levelDb[i]!,
      strokes.levelSe[i]!,
      strokes.role[i]!,
      ...place,
      strokes.hand[i]!,
      slot === null ? null : yesNo(slots.accent[slot]!),
      slot === null ? null : yesNo(slots.grace[slot]!),
      strokes.deviationMs[i]!,
    ];
  });
  return [[...strokesTableHead], ...records];
}

import { describe, expect, it } from 'vitest';
import { strokesTable, strokesTableHead } from '../../src/cli/strokes-table.ts';
import { csv } from '../../src/formats/csv.ts';
import { exampleResult } from '../support/example-result.ts';

const result = exampleResult();
const [head, ...records] = strokesTable(result);
const column = (name: (typeof strokesTableHead)[number]) =>
  records.map((record) => record[strokesTableHead.indexOf(name)]);

describe('strokesTable', () => {
  it('has a record for each stroke, in order of time', () => {
    expect(head).toEqual(strokesTableHead);
    expect(column('time_s')).toEqual(result.strokes.time);
    expect(column('role')).toEqual(result.strokes.role);
    for (const record of records) expect(record).toHaveLength(strokesTableHead.length);
  });

  it('counts line, repeat, bar, beat and partial from 1', () => {
    const { slots, strokes } = result;
    strokes.slot.forEach((slot, i) => {
      if (slot === null) return;
      expect(records[i]!.slice(5, 10)).toEqual([
        slots.line[slot]! + 1,
        slots.repeat[slot]! + 1,
        slots.bar[slot]! + 1,
        slots.beat[slot]! + 1,
        slots.partial[slot],
      ]);
    });
  });

  it('leaves empty what a stroke on no slot doesn’t have', () => {
    const extra = result.strokes.role.indexOf('extra');
    expect(extra).toBeGreaterThan(-1);
    expect(records[extra]!.slice(5, 10)).toEqual([null, null, null, null, null]);
    expect(csv([records[extra]!])).toMatch(/,extra,,,,,,/);
  });
});

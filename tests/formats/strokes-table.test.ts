import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { csv } from '../../src/formats/csv.ts';
import { strokesTable, strokesTableHead } from '../../src/formats/strokes-table.ts';
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

  it("leaves empty what a stroke on no slot doesn't have", () => {
    const extra = result.strokes.role.indexOf('extra');
    expect(extra).toBeGreaterThan(-1);
    expect(records[extra]!.slice(5, 10)).toEqual([null, null, null, null, null]);
    expect(csv([records[extra]!])).toMatch(/,extra,,,,,,/);
  });
});

describe('the table as a file, read by a strict reader of RFC 4180', () => {
  it('gives the same fields back, names and numbers', () => {
    const odd = 'a "b", c\r\nd';
    const text = csv([...strokesTable(result), [odd, ...strokesTableHead.slice(1).map(() => null)]]);
    const read = parse(text, { record_delimiter: '\r\n', relax_column_count: false, relax_quotes: false });
    const fields = (row: readonly unknown[]) => row.map((field) => (field === null ? '' : String(field)));
    expect(read.slice(0, -1)).toEqual(strokesTable(result).map(fields));
    expect(read.at(-1)![0]).toBe(odd);
    expect(read.slice(1, -1).map((row) => Number(row[0]))).toEqual(result.strokes.time);
  });
});

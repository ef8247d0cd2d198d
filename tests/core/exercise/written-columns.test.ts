import { expect, it } from 'vitest';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { writtenColumns } from '../../../src/core/exercise/written-columns.ts';

it('slots stand in columns of equal length, in their order', () => {
  const parsed = parseSheet('>RL lR- ; times: 2');
  if (!parsed.ok) throw new Error('a plain sheet');
  const slots = layOut(parsed.sheet);
  const columns = writtenColumns(slots);
  expect(columns.hand).toEqual(['R', 'L', 'L', 'R', 'R', 'L', 'L', 'R']);
  expect(columns.grace).toEqual(slots.map(({ grace }) => grace));
  expect(Object.values(columns).map(({ length }) => length)).toEqual(Array(11).fill(slots.length));
});

import { expect, it } from 'vitest';
import { endurance } from '../../src/charts/endurance.ts';
import { smallTake } from './small-take.ts';

it('tells of taps that rise from part to part, and of a spread that grows', () => {
  const take = smallTake(32);
  const half = (i: number) => (i < 48 ? 0 : 1);
  const levelDb = take.strokes.levelDb.map((level, i) =>
    take.slots.accent[i] ? level : level + 4 * half(i),
  );
  // Beats lie ±2 ms round each partial's place in the first half and ±8 ms in the second.
  const deviationMs = take.strokes.deviationMs.map(
    (at, i) => at! + (Math.floor(i / 3) % 4 < 2 ? 1 : -1) * (half(i) ? 8 : 2),
  );
  const { rows } = endurance.table({ ...take, strokes: { ...take.strokes, levelDb, deviationMs } });
  expect(rows).toHaveLength(4);
  expect(rows.map((row) => row[3]!.split(',')[0])).toEqual(
    ['\u221223.0', '\u221223.0', '\u221219.0', '\u221219.0'].map((level) => `${level} dB`),
  );
  const widths = rows.map((row) => Number.parseFloat(row[2]!));
  expect(widths.slice(0, 2)).toEqual([4, 4]);
  expect(widths.slice(2)).toEqual([16, 16]);
});

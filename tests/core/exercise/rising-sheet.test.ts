import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { lineFromText } from '../../../src/core/exercise/line-from-text.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { risingSheet, risingTempos } from '../../../src/core/exercise/rising-sheet.ts';
import { writeSheet } from '../../../src/core/exercise/write-sheet.ts';

const parsed = lineFromText('>RLR >LRL', { repeats: 4 });
if (!parsed.ok) throw new Error('no line');
const { line } = parsed;

describe('risingSheet', () => {
  it('goes up by steps and never past the end', () => {
    expect(risingTempos({ from: 80, to: 100, step: 10 })).toEqual([80, 90, 100]);
    expect(risingTempos({ from: 80, to: 99, step: 10 })).toEqual([80, 90]);
    expect(risingTempos({ from: 60, to: 60.6, step: 0.2 })).toEqual([60, 60.2, 60.4, 60.6]);
    expect(risingTempos({ from: 80, to: 70, step: 5 })).toEqual([80]);
    const tempo = fc.integer({ min: 10, max: 500 });
    fc.assert(
      fc.property(tempo, tempo, fc.integer({ min: 1, max: 50 }), (from, to, step) => {
        const tempos = risingTempos({ from, to, step });
        expect(tempos[0]).toBe(from);
        tempos.slice(1).forEach((bpm, i) => {
          expect(bpm).toBeGreaterThan(tempos[i]!);
          expect(bpm).toBeLessThanOrEqual(to);
        });
      }),
    );
  });

  it('is a sheet that is written and read again, each line timed at its own tempo', () => {
    const sheet = risingSheet(line, { from: 60, to: 120, step: 60 });
    const again = parseSheet(writeSheet(sheet));
    expect(again.ok && again.sheet.lines.map(({ bpm, repeats }) => [bpm, repeats])).toEqual([
      [60, 4],
      [120, 4],
    ]);
    const times = layOut(sheet).map(({ time }) => time!);
    expect(times).toHaveLength(48);
    expect(times[1]! - times[0]!).toBeCloseTo(1 / 3, 9);
    expect(times[24]).toBeCloseTo(8, 9);
    expect(times[25]! - times[24]!).toBeCloseTo(1 / 6, 9);
  });
});

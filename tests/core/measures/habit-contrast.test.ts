import { describe, expect, it } from 'vitest';
import {
  changeColumn,
  handColumn,
  partialColumn,
  placeColumn,
} from '../../../src/core/measures/design-columns.ts';
import { canTell, habitContrast } from '../../../src/core/measures/habit-contrast.ts';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const told = (sheet: string) => {
  const timing = simulatedPerformance({
    sheet: `tempo: 100\n${sheet}`,
    seed: 1,
    player: { ...machine, motor: 0.005 },
  }).timing!;
  const can = (id: string) => canTell(timing, new Map([[id, 1]]));
  const partial = new Map([1, 2, 3].map((p) => [partialColumn(3, p), (p === 1 ? 1 : 0) - 1 / 3]));
  return { partial: canTell(timing, partial), hand: can(handColumn), change: can(changeColumn) };
};

describe('canTell', () => {
  // Which terms a sticking confounds follows from counting: in RRR LLL a change of hands is always on partial 1, in
  // RLR LRL every interval changes hands, in RRL the hand goes with the partial.
  it.each([
    ['RLR LRL; x12', { partial: true, hand: true, change: false }],
    ['RRR LLL; x12', { partial: false, hand: true, change: false }],
    ['RRL RRL; x12', { partial: false, hand: false, change: false }],
    ['RRL LRR LLR RLL; x6', { partial: true, hand: true, change: true }],
  ])('tells in %s what can be told', (sheet, want) => expect(told(sheet)).toEqual(want));

  it('tells accents from partials only where accents move', () => {
    const can = (sheet: string) => {
      const take = simulatedPerformance({
        sheet: `tempo: 100\n${sheet}`,
        seed: 1,
        player: { ...machine, motor: 0.005 },
      });
      const on = new Map([
        [placeColumn('on'), 1],
        [placeColumn('before'), -0.5],
        [placeColumn('after'), -0.5],
      ]);
      return canTell(take.timing!, on);
    };
    expect(can('>RLR >LRL; x12')).toBe(false);
    expect(can('>RLR >LRL; x8\nR>LR L>RL; x8\nRL>R LR>L; x8')).toBe(true);
  });
});

describe('habitContrast', () => {
  const timing = simulatedPerformance({
    sheet: 'tempo: 100\n>RLR >LRL; x12',
    seed: 3,
    player: { ...machine, motor: 0.005 },
  }).timing!;

  // Newey & West 1987 written out: what each stroke's residual does to the contrast, products of strokes up to half a
  // window apart with falling weights, stretches apart, times n/(n − p).
  it('is the weighted terms, with the range of its strokes and their neighbours', () => {
    const { fit, columns, columnIds, residual, count, memory, stretch } = timing;
    const contrast = new Map([
      [columnIds[fit.kept[0]!]!, 2],
      [columnIds[fit.kept[1]!]!, -1],
    ]);
    const weights = fit.kept.map((at) => contrast.get(columnIds[at]!) ?? 0);
    // A stroke moves the coefficients by inverse × its row × its residual.
    const moved = Array.from(residual, (off, i) =>
      weights.reduce(
        (sum, w, k) =>
          sum + w * fit.kept.reduce((s, at, l) => s + fit.inverse[k]![l]! * columns[at]![i]! * off, 0),
        0,
      ),
    );
    let variance = 0;
    for (let i = 0; i < moved.length; i++)
      for (let j = 0; j < moved.length; j++)
        if (stretch[i] === stretch[j] && Math.abs(i - j) <= memory)
          variance += moved[i]! * moved[j]! * (1 - Math.abs(i - j) / (memory + 1));
    const standardError = (count / (count - fit.kept.length)) * Math.sqrt(variance);
    const degrees = count / memory - 1;
    const value = 2 * fit.coefficients[fit.kept[0]!]! - fit.coefficients[fit.kept[1]!]!;
    const half = studentTQuantile(0.975, degrees) * standardError;
    const estimate = habitContrast(timing, contrast);
    for (const [name, want] of Object.entries({
      value,
      standardError,
      degrees,
      low: value - half,
      high: value + half,
    }))
      expect(estimate[name as keyof typeof estimate], name).toBeCloseTo(want, 9);
    expect(standardError).toBeGreaterThan(0);
  });

  it('leaves out strokes that are not judged, and has two degrees of freedom at least', () => {
    const contrast = new Map([[timing.columnIds[timing.fit.kept[0]!]!, 1]]);
    const none = { ...timing, judged: new Uint8Array(timing.judged.length) };
    expect(habitContrast(none, contrast).standardError).toBe(0);
    expect(habitContrast({ ...timing, memory: timing.count }, contrast).degrees).toBe(2);
  });
});

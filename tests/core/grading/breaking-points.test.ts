import { describe, expect, it } from 'vitest';
import { breakingRows } from '../../../src/cli/breaking-rows.ts';
import { textStyles } from '../../../src/cli/text-layout.ts';
import { gradeNotes } from '../../../src/core/grade-notes.ts';
import { validateTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { breakingPoint } from '../../../src/report/parts/breaking-point.ts';
import { playRising, risingExercise } from '../../support/rising-notes.ts';

const sheet = risingExercise({ from: 100, to: 160, step: 10 }, 8);
/** s of a partial. */
const partial = (bpm: number) => 20 / bpm;

describe('breakingPoints', () => {
  it('finds where evenness breaks: at the tempo at which strokes scatter by a tenth of a partial', () => {
    const truth = 136;
    const scatter = (bpm: number) => 0.1 * partial(bpm) * (bpm / truth) ** 4;
    const result = gradeNotes(playRising(sheet, { scatter }, 1), sheet);
    expect(validateTakeResult(result)).toBe(result);
    const [breaking] = result.breaking!;
    expect(breaking).toMatchObject({ lines: [0, 1, 2, 3, 4, 5, 6], played: 7, stoppedAt: null });
    const evenness = breaking!.dimensions.find(({ id }) => id === 'evenness')!;
    expect(evenness.state).toBe('broke');
    expect(evenness.low!).toBeLessThanOrEqual(truth);
    expect(evenness.high!).toBeGreaterThanOrEqual(truth);
    expect(Math.abs(evenness.bpm - truth)).toBeLessThan(15);
    expect(evenness.scores.map(({ bpm }) => bpm)).toEqual([100, 110, 120, 130, 140, 150, 160]);
    const rows = breakingRows(result, 80, textStyles(false));
    expect(rows.join('\n')).toMatch(
      /Evenness +breaks at about 1[34]\d\n +likely between 1[123]0 and 1[456]0/,
    );
    expect(rows.every((row) => row.length <= 80)).toBe(true);
    const html = breakingPoint(result);
    expect(html).toMatch(/gives way first: breaks at about 1\d\d BPM\. All 7 tempos were played\./);
  });

  it('says that nothing broke up to the last tempo', () => {
    const result = gradeNotes(playRising(sheet, { scatter: () => 0.002 }, 2), sheet);
    for (const { state, bpm, high } of result.breaking![0]!.dimensions)
      expect([state, bpm, high]).toEqual(['held', 160, null]);
    expect(breakingPoint(result)).toContain('Nothing broke in this take.');
    expect(breakingRows(result, 60, textStyles(false)).join('\n')).toContain('did not break up to 160');
  });

  it('tells the line in which the take stops, and judges only what was played', () => {
    // Six lines of 48 strokes at 100 to 150, the last left after a third of it.
    const result = gradeNotes(playRising(sheet, { scatter: () => 0.002, until: 5 * 48 + 16 }, 3), sheet);
    const [breaking] = result.breaking!;
    expect(breaking).toMatchObject({ played: 6, stoppedAt: 150 });
    for (const { state, bpm } of breaking!.dimensions.filter(({ id }) => id === 'evenness'))
      expect([state, bpm]).toEqual(['held', 140]);
    expect(breakingPoint(result)).toContain('The take stops in the line at 150 BPM.');
  });

  it('finds dropped strokes break completeness, and leaves evenness whole', () => {
    const drops = ({ index }: { readonly index: number }, bpm: number) => bpm >= 140 && index % 9 === 4;
    const result = gradeNotes(playRising(sheet, { scatter: () => 0.002, drops }, 4), sheet);
    const of = (id: string) => result.breaking![0]!.dimensions.find((one) => one.id === id)!;
    const { state, bpm, low, high } = of('completeness');
    expect([state, high]).toEqual(['broke', 140]);
    expect(bpm).toBeGreaterThan(130);
    // No stroke missed of 48 still leaves room for a few in a hundred.
    expect(low).toBeGreaterThanOrEqual(100);
    expect(of('evenness').state).toBe('held');
  });

  it('lays a take that ends in a mess on its own lines, not on those of faster tempos', () => {
    const scatter = (bpm: number) => 0.1 * partial(bpm) * (bpm / 117) ** 4;
    const result = gradeNotes(playRising(sheet, { scatter }, 2), sheet);
    const [first] = result.segments;
    expect([first!.firstSlot, Math.round(first!.bpm)]).toEqual([0, 100]);
    const evenness = result.breaking![0]!.dimensions.find(({ id }) => id === 'evenness')!;
    expect([evenness.low! <= 117, evenness.high! >= 117]).toEqual([true, true]);
  });

  it('leaves other sheets alone', () => {
    const short = risingExercise({ from: 100, to: 120, step: 10 }, 8);
    const result = gradeNotes(playRising(short, { scatter: () => 0.002 }, 5), short);
    expect(result.breaking).toBeUndefined();
    expect(breakingPoint(result)).toBe('');
  });
});

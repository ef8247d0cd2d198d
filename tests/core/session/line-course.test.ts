import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { lineCourses } from '../../../src/core/session/line-course.ts';
import { courseWords, lineTable } from '../../../src/report/parts/line-table.ts';
import { smallTake } from '../../charts/small-take.ts';

/** Two lines, the first two repeats of two beats, the second four; deviations nought but where told. */
function twoLines(deviation: (line: number, repeat: number) => number): TakeResult {
  const take = smallTake(12);
  const line = take.slots.line.map((_, i) => (i < 12 ? 0 : 1));
  const repeat = take.slots.repeat.map((_, i) => (i < 12 ? Math.floor(i / 6) : Math.floor((i - 12) / 6)));
  const sheetLine = take.sheet.lines[0]!;
  const deviationMs = line.map((of, i) => (i % 2 === 0 ? 1 : -1) * deviation(of, repeat[i]!));
  return {
    ...take,
    sheet: {
      title: 'Two',
      lines: [
        { ...sheetLine, label: 'first', repeats: 2 },
        { ...sheetLine, label: 'second', repeats: 4 },
      ],
    },
    strokes: { ...take.strokes, deviationMs },
    slots: { ...take.slots, line, repeat },
  };
}

describe('lineCourses', () => {
  it('finds the repeat from which a line broke, and leaves one that held alone', () => {
    // 60 ms is 30 % of a partial of 200 ms: far outside every band of the rubric.
    const [first, second] = lineCourses(twoLines((line, repeat) => (line === 1 && repeat >= 2 ? 60 : 1)));
    expect(first!.repeats.map(({ repeat }) => repeat)).toEqual([0, 1]);
    expect(first!.brokeFrom).toBeNull();
    expect(second!.brokeFrom).toBe(2);
    expect(second!.causes.unevenShare).toBeCloseTo(30, 6);
    expect(courseWords(first!)).toBe('Held through both repeats.');
    expect(courseWords(second!)).toBe(
      'Held, then broke from repeat 3 on: strokes up to 30 % of a partial apart from even.',
    );
  });

  it('counts missed strokes in their own line and repeat', () => {
    const take = twoLines(() => 1);
    const state = take.slots.state.map((was, i) => (i === 19 ? 'missed' : was));
    const stroke = take.slots.stroke.map((was, i) => (i === 19 ? null : was));
    const [first, second] = lineCourses({ ...take, slots: { ...take.slots, state, stroke } });
    expect(first!.repeats.map(({ missed }) => missed)).toEqual([0, 0]);
    expect(second!.repeats.map(({ missed }) => missed)).toEqual([0, 1, 0, 0]);
    expect(courseWords(second!)).toMatch(/^Weak in repeat 2: 1 missed\.$/);
  });

  it('says that a line was not played', () => {
    const take = twoLines(() => 1);
    const played = (i: number) => take.slots.line[i] === 0;
    const slots = {
      ...take.slots,
      stroke: take.slots.stroke.map((was, i) => (played(i) ? was : null)),
      state: take.slots.state.map((was, i) => (played(i) ? was : ('not-reached' as const))),
    };
    expect(courseWords(lineCourses({ ...take, slots })[1]!)).toBe(
      'Not played, or not found in the recording.',
    );
  });
});

describe('lineTable', () => {
  it('has a row a line, a bar a repeat, a cross for each weak one, and the same in words', () => {
    const html = lineTable(twoLines((line, repeat) => (line === 1 && repeat >= 2 ? 60 : 1)));
    expect(html.match(/<tr><th scope="row">/g)).toHaveLength(2);
    expect(html.match(/<rect /g)).toHaveLength(6);
    expect(html.match(/class="cross"/g)).toHaveLength(2);
    expect(html).toMatch(/aria-label="repeat 1: \d+ of 100; repeat 2: \d+ of 100; repeat 3/);
  });

  it('is left out for one line played once', () => {
    expect(lineTable(smallTake(4))).toBe('');
  });
});

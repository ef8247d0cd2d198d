import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { handbookPath } from '../../../fixtures/write-handbook.ts';
import { measures } from '../../../src/core/measures/index.ts';
import { handbookText, pointsSentences } from '../../../src/core/scoring/handbook-text.ts';
import { measureHandbook, workedOutFigures } from '../../../src/core/scoring/measure-handbook.ts';
import { rubrics } from '../../../src/core/scoring/rubrics/index.ts';

describe('the handbook of the measures', () => {
  it('is what the list of measures says today; `npx tsx fixtures/write-handbook.ts` writes it anew', () => {
    expect(readFileSync(handbookPath, 'utf8')).toBe(handbookText());
  });

  it('has every measure with every one of its fields, and a sentence without gaps for each reason', () => {
    const text = handbookText();
    for (const measure of measures) {
      const { id, title, describes, formula, interval, reading, limits, source } = measure;
      expect(text).toContain(`<a id="${id}"></a>\n\n## ${title}\n`);
      for (const part of [describes, formula, interval, reading, ...limits, source])
        expect(text).toContain(part);
    }
    for (const { refusals } of measureHandbook())
      for (const sentence of refusals) expect(sentence).not.toMatch(/\?\)|NaN|undefined/);
  });

  it('takes its points from the rubrics: each scored figure once for each rubric, as the rubric has it', () => {
    const told = [...measureHandbook(), ...workedOutFigures()].flatMap(({ id, points }) =>
      points.map((p) => [p.rubric, id, p.secure, p.nearly].join(' ')),
    );
    const inRubrics = rubrics.flatMap((rubric) =>
      rubric.dimensions.flatMap(({ criteria }) =>
        criteria.map(({ measure, secure, nearly }) => [rubric.id, measure, secure, nearly].join(' ')),
      ),
    );
    expect(told.sort()).toEqual(inRubrics.sort());
  });

  it('tells a band and a probability in the units that people see', () => {
    const point = { rubric: 'mine', secure: 0.01, nearly: 0.05, source: 'a choice' };
    expect(pointsSentences([{ ...point, perfect: 1 }], 'probability')).toEqual([
      'mine: secure up to 1 % from perfect, nearly up to 5 %; perfect is 100 %',
    ]);
    expect(pointsSentences([{ ...point, perfect: { min: 8, max: 20 }, secure: 1, nearly: 3 }], 'dB')).toEqual(
      ['mine: secure up to 1 dB from perfect, nearly up to 3 dB; perfect is 8 to 20 dB'],
    );
  });
});

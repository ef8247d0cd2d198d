import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRubric } from '../../../src/core/scoring/read-rubric.ts';
import { rubrics } from '../../../src/core/scoring/rubrics/index.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../../src/core/scoring/score-take.ts';
import { made } from './advice/made-input.ts';

const page = readFileSync(join(import.meta.dirname, '../../../src/core/scoring/scores.md'), 'utf8');

/** Rows of the page's tables, cell by cell, without heads and rules. */
const rows = [...page.matchAll(/^\| (.*) \|$/gm)].map(([, row]) => row!.split(' | '));
const figures = rows.filter((row) => row.length === 10 && row[0] !== 'dimension');
const dimensions = rows.filter((row) => row.length === 3 && row[0] !== 'dimension');

describe('the worked example of the page on scores', () => {
  it('has the points of the rubric that it names', () => {
    const told = figures.map(([dimension, figure, weight, , perfect, secure, nearly]) =>
      [dimension, figure, weight, perfect, secure, nearly].join(' '),
    );
    const inRubric = steady.dimensions.flatMap(({ id, criteria }) =>
      criteria.map(({ measure, weight, perfect, secure, nearly }) => {
        const best = typeof perfect === 'number' ? perfect : `${perfect.min} to ${perfect.max}`;
        return [id, measure, weight, best, secure, nearly].join(' ');
      }),
    );
    expect(told).toEqual(inRubric.filter((row) => !row.startsWith('hands')));
  });

  it('has k and h by the formulas on the page', () => {
    for (const [, figure, , , , secure, nearly, k, h] of figures) {
      const power = Math.log(40 / 60 / (15 / 85)) / Math.log(Number(nearly) / Number(secure));
      expect(Number(k), figure).toBeCloseTo(power, 3);
      expect(Number(h), figure).toBeCloseTo(Number(nearly) / (40 / 60) ** (1 / power), 3);
    }
  });

  it('has the scores that the program gives', () => {
    const measures = figures.map((row) => made(row[1]!, Number.parseFloat(row[3]!), 0));
    const scored = scoreTake({ measures, lines: [{ ratioBand: null }], strokes: 144, rubric: steady });
    if (scored.state !== 'scored') throw new Error(scored.reason.code);
    const { scores } = scored;
    const given = new Map<string, number>([
      ...scores.dimensions.map(({ id, score }) => [id, score.score] as const),
      ...scores.dimensions.flatMap((one) => one.measures.map((m) => [m.id, m.score.score] as const)),
      ['overall', scores.overall.score],
    ]);
    const told = [
      ...figures.map((row) => [row[1]!, row[9]!]),
      ...dimensions.map((row) => [row[0]!, row[2]!]),
    ];
    expect(told).toHaveLength(16);
    for (const [id, score] of told) expect(given.get(id!)!.toFixed(1), id).toBe(score);
  });
});

describe('the rest of the page on scores', () => {
  it('shows a file that is accepted and does what the page says', () => {
    const [, file] = /```json\n([\s\S]*?)```/.exec(page)!;
    const { title, dimensions: own } = readRubric(JSON.parse(file!));
    expect(title).toBe('Tuesday class');
    expect(own.map(({ id }) => id)).not.toContain('steadiness');
    expect(own.find(({ id }) => id === 'hands')!.weight).toBe(2);
    const ratio = own.flatMap(({ criteria }) => criteria).find((c) => c.measure === 'accent-to-tap-ratio');
    expect(ratio).toMatchObject({ perfect: { min: 10, max: 18 }, secure: 1, nearly: 3 });
  });

  it('names the rubrics that ship, and how far apart they are', () => {
    for (const { id } of rubrics) expect(page).toContain(`*${id}*`);
    const secure = (id: string) => rubrics.find((r) => r.id === id)!.dimensions[0]!.criteria[0]!.secure;
    expect(secure('first-years') / secure('steady')).toBeCloseTo(1.5, 12);
    expect(secure('advanced') / secure('steady')).toBeCloseTo(0.6, 12);
  });
});

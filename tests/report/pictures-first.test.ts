import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { picturesFirst, shownBy } from '../../src/report/pictures-first.ts';

const rules = join(import.meta.dirname, '../../src/core/scoring/advice');
/** Codes that the rules of advice give, as they stand in the rules. */
const codes = readdirSync(rules)
  .map((file) => readFileSync(join(rules, file), 'utf8'))
  .flatMap((text) => [...text.matchAll(/\bcode(?::| =)[^;{}]*?'([a-z-]+)'(?:\s*:\s*'([a-z-]+)')?/g)])
  .flatMap(([, first, second]) => (second === undefined ? [first!] : [first!, second]));

describe('the pictures that come first', () => {
  it('are known for every piece of advice, and for nothing else', () => {
    expect(codes.length).toBeGreaterThan(14);
    expect(Object.keys(shownBy).toSorted()).toEqual([...new Set(codes)].toSorted());
  });

  it('are pictures of the report', () => {
    const pictures = chartList.map(({ id }) => id);
    expect(Object.values(shownBy).filter((id) => !pictures.includes(id))).toEqual([]);
  });

  it('are every stroke on the grid, and those behind what is advised', () => {
    const advice = ['bend-at-accent', 'tempo-stay'].map((code) => ({ code, facts: {}, strokes: [] }));
    expect([...picturesFirst({ advice })]).toEqual(['every-stroke', 'accent-bend']);
  });
});

import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { adviceSentences } from '../../src/core/result/sentences-advice.ts';
import { picturesFirst, shownBy } from '../../src/report/pictures-first.ts';

/** Codes that have a sentence of advice, but those on the tempo and on nothing. */
const codes = Object.keys(adviceSentences).filter((code) => !/^(tempo|nothing)-/.test(code));

describe('the pictures that come first', () => {
  it('are known for every piece of advice, and for nothing else', () => {
    expect(codes.length).toBeGreaterThan(14);
    expect(Object.keys(shownBy).toSorted()).toEqual(codes.toSorted());
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

import { describe, expect, it } from 'vitest';
import { exampleResult } from '../support/example-result.ts';
import { mostChange } from './chains-report.ts';
import { compareResults, movedBy } from './compare-results.ts';

const clean = exampleResult();

describe('compareResults', () => {
  it('finds nothing between a result and itself', () => {
    const { points, refused, lost, gained, figures } = compareResults(clean, clean);
    expect(Object.values(points).every((change) => change === 0)).toBe(true);
    expect([refused, lost, gained]).toEqual([[], 0, 0]);
    expect(figures.every((pair) => movedBy(pair) === 0)).toBe(true);
  });

  it('finds a score that is gone, a lost stroke and a figure that is refused', () => {
    const other = exampleResult({
      scores: null,
      measures: clean.measures.slice(1),
      slots: { ...clean.slots, state: clean.slots.state.map((state, i) => (i === 0 ? 'missed' : state)) },
    });
    const comparison = compareResults(clean, other);
    expect(comparison.lost).toBe(1);
    expect(comparison.refused).toEqual(['Timing spread {}: not there']);
    expect(mostChange([comparison], 'overall')).toBeNaN();
  });

  it('tells a figure that is refused from one that does not apply', () => {
    const given = (outcome: (typeof clean.measures)[number]['outcome']) =>
      compareResults(
        clean,
        exampleResult({ measures: [{ ...clean.measures[0]!, outcome }, ...clean.measures.slice(1)] }),
      );
    const reason = { code: 'played-to-a-click', facts: {} };
    expect(given({ state: 'not-applicable', reason }).refused).toEqual([]);
    expect(given({ state: 'not-measurable', reason }).refused).toEqual([
      'Timing spread {}: played-to-a-click',
    ]);
  });

  it('misses no figure of a single repeat', () => {
    const repeat = { ...clean.measures[0]!, scope: { repeat: 3 } };
    const withRepeat = exampleResult({ measures: [...clean.measures, repeat] });
    expect(compareResults(withRepeat, clean).refused).toEqual([]);
    expect(compareResults(withRepeat, withRepeat).figures).toHaveLength(
      compareResults(clean, clean).figures.length + 1,
    );
  });

  it('counts a move in halves of the interval on its side', () => {
    const measures = clean.measures.map((one) =>
      one.id === 'timing-spread' && one.outcome.state === 'measured'
        ? { ...one, outcome: { ...one.outcome, value: 14.1 + 2.5 } }
        : one,
    );
    const { figures } = compareResults(clean, exampleResult({ measures }));
    const pair = figures.find(({ id }) => id === 'timing-spread')!;
    // 11.6 (9.8 to 14.1) → 16.6
    expect(movedBy(pair)).toBeCloseTo(2, 9);
  });
});

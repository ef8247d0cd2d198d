import { describe, expect, it } from 'vitest';
import { segmentList } from '../../../src/core/grading/segment-list.ts';
import { takeWarnings } from '../../../src/core/grading/take-warnings.ts';
import { hasSentence } from '../../../src/core/result/sentences.ts';
import { madeTake } from './made-take.ts';

const { sheet, slots, alignment, strokes } = madeTake();
const warningsOf = (change: Partial<typeof alignment> = {}) => {
  const changed = { ...alignment, ...change };
  return takeWarnings({ sheet, slots, alignment: changed, segments: segmentList(changed, strokes) });
};

describe('takeWarnings', () => {
  it('tells of what was not reached, given up and played on top', () => {
    expect(warningsOf()).toEqual([
      { code: 'part-not-played', facts: { notReached: 12, wanted: 24 } },
      { code: 'runs-given-up', facts: { runs: 1, from: 1, to: 2 } },
      { code: 'surplus-played', facts: { runs: 1, from: 10 } },
    ]);
  });

  it('tells of a tempo far from the one asked, and not of one that is near', () => {
    const at = (bpm: number) =>
      warningsOf({ segments: alignment.segments.map((segment) => ({ ...segment, period: 60 / bpm })) }).find(
        ({ code }) => code === 'tempo-far-off',
      );
    expect(at(75)?.facts).toEqual({ asked: 60, played: 75 });
    expect(at(45)?.facts).toEqual({ asked: 60, played: 45 });
    expect(at(64)).toBeUndefined();
  });

  it('passes a doubt on first', () => {
    const doubt = { code: 'phase-not-told', facts: { strokes: 25 } };
    expect(warningsOf({ doubt })[0]).toEqual(doubt);
  });

  it('has a sentence for each', () => {
    for (const { code } of warningsOf()) expect(hasSentence(code)).toBe(true);
  });
});

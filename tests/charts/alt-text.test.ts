import { describe, expect, it } from 'vitest';
import {
  levelsText,
  scoreOverviewText,
  tempoCurveText,
  timingHistogramText,
} from '../../src/charts/alt-text.ts';
import { timingBySlot } from '../../src/charts/timing-by-slot.ts';
import { smallTake } from './small-take.ts';

describe('the words of the pictures, of a take whose middles are known by construction', () => {
  const result = smallTake(4);

  it('tells the middle of each partial', () => {
    expect(timingBySlot.text(result)).toBe(
      'Every graded stroke, by how early or late each came. ' +
        'In the middle, partial 1 lands even, partial 2 lands 6.0 ms early and partial 3 lands 4.0 ms late.',
    );
  });

  it('tells how far accents stand out and whether taps reach them', () => {
    // Taps are half at −24 and half at −22 dB, accents at −12 dB: −12 − (−23) = 11.
    expect(levelsText(result)).toContain('The middle accent lies 11.0 dB above the middle tap.');
    expect(levelsText(result)).toContain('No tap is as loud');
    const levelDb = result.strokes.levelDb.map((level, i) => (i === 4 ? -10 : level));
    expect(levelsText({ ...result, strokes: { ...result.strokes, levelDb } })).toContain('1 of 8 taps');
  });

  it("tells the tempo's ends, and the scores with their words", () => {
    expect(tempoCurveText(result)).toContain('99.0 at the start, 102.0 at the end');
    expect(tempoCurveText(result)).toContain('Asked for: 100.');
    expect(scoreOverviewText(result)).toContain('All together 70 (nearly there)');
  });

  it('says how many strokes it shows when there are too many for one picture', () => {
    expect(levelsText(smallTake(1000))).toContain('At most 450 of the 3000 graded strokes');
    expect(timingBySlot.text(smallTake(1000))).toContain('At most 450 of the 3000 graded strokes');
  });

  it('tells the narrowest and the widest hill', () => {
    expect(timingHistogramText(result)).toContain('lies within 0.0 ms');
  });
});

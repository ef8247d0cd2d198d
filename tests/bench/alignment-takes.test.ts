import { describe, expect, it } from 'vitest';
import { slotF } from '../core/alignment/judge-alignment.ts';
import { line, sheetOf } from '../core/alignment/made-sheet.ts';
import { realities } from '../core/alignment/realities.ts';
import { alignRendered } from './alignment-takes.ts';

/** Neither those of the report nor those of the other tests. */
const firstSeed = 31_000;

describe('performances rendered and heard', () => {
  const sloppy = ['sloppy', 'sloppy, strokes missed and extra'] as const;
  it.each(sloppy)('%s: 99.5 of 100 strokes on their slots', (name) => {
    const judged = [0, 1, 2].map((k) => alignRendered(realities[name]!(firstSeed + k)).judgement);
    const sum = (of: 'right' | 'found' | 'wanted') => judged.reduce((total, one) => total + one[of], 0);
    expect(sum('wanted')).toBeGreaterThan(150);
    expect(slotF({ right: sum('right'), found: sum('found'), wanted: sum('wanted') })).toBeGreaterThanOrEqual(
      0.995,
    );
    expect(judged.every(({ segmentsRight }) => segmentsRight)).toBe(true);
  });

  const broken = ['restart from a bar', 'line left out', 'partial dropped', 'restart in a mess'] as const;
  it.each(broken)('%s: the right segments, and nothing of an abandoned one graded', (name) => {
    const { judgement } = alignRendered(realities[name]!(firstSeed + 50));
    expect(judgement.segmentsRight).toBe(true);
    expect(judgement.wronglyGraded).toBe(0);
  });

  it('of strokes all alike without a click say that the first partial is a guess', () => {
    const sheet = sheetOf(line('RLR LRL RLR LRL', { repeats: 4 }));
    const { alignment } = alignRendered({ sheet, seed: firstSeed + 90, spreadDb: 1.2 });
    expect(alignment.doubt?.code).toBe('phase-not-told');
  });
});

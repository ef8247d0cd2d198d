import { describe, expect, it } from 'vitest';
import { handTerm, levelEffect, partialTerms } from '../../../src/core/measures/level-effect.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const louderLeft = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.hand === 'L' ? 3 : 0);
const { strokes } = takeOfLevels('>RLR >LRL; x24', louderLeft, { levelSd: () => 0.2 });
const taps = strokes.filter((s) => !s.slot.accent);

describe('levelEffect', () => {
  it('is the difference that was put in', () => {
    const effect = levelEffect(taps, { term: handTerm, behind: partialTerms(taps) });
    expect(effect?.value).toBeCloseTo(3, 1);
    expect(effect!.low).toBeLessThan(3);
    expect(effect!.high).toBeGreaterThan(3);
  });

  it('is null where earlier terms explain it', () => {
    expect(levelEffect(taps, { before: [handTerm], term: (s) => -2 * handTerm(s) })).toBeNull();
  });

  it('speaks for later terms that are the same', () => {
    const alone = levelEffect(taps, { term: handTerm });
    const doubled = levelEffect(taps, { term: handTerm, behind: [handTerm] });
    expect(doubled?.value).toBeCloseTo(alone!.value, 9);
  });

  it('leaves one slip out', () => {
    const slip = taps.map((s, i) => (i === 20 ? { ...s, levelDb: s.levelDb + 20 } : s));
    expect(levelEffect(slip, { term: handTerm })?.value).toBeCloseTo(3, 1);
  });
});

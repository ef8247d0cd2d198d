import { describe, expect, it } from 'vitest';
import { whyNotGradable } from '../../../src/core/grading/gradable.ts';
import { madeTake, padStroke } from './made-take.ts';

const { slots, alignment, hearing } = madeTake();
const take = { peak: 0.5, hearing, slots, alignment };
const heard = (count: number) => ({
  ...hearing,
  sounds: Array.from({ length: count }, (_, i) => padStroke(i / 3)),
});

describe('whyNotGradable', () => {
  it('finds nothing wrong with a take that was played', () => {
    expect(whyNotGradable(take)).toBeNull();
  });

  it('says how quiet a silent take is, and when there is nothing at all', () => {
    expect(whyNotGradable({ ...take, peak: 0 })).toEqual({ code: 'silent-take', facts: {} });
    const quiet = whyNotGradable({ ...take, peak: 0.0001 });
    expect(quiet?.code).toBe('silent-take');
    expect(quiet?.facts.peakDb).toBeCloseTo(-80, 9);
  });

  it('counts strokes on the pad alone', () => {
    expect(whyNotGradable({ ...take, hearing: heard(0) })).toEqual({
      code: 'no-strokes-heard',
      facts: { wanted: 24 },
    });
    const clicks = {
      ...hearing,
      sounds: hearing.sounds.map((sound) => ({ ...sound, sound: 'click' as const })),
    };
    expect(whyNotGradable({ ...take, hearing: clicks })?.code).toBe('no-strokes-heard');
    expect(whyNotGradable({ ...take, hearing: heard(5) })).toEqual({
      code: 'too-few-strokes-heard',
      facts: { strokes: 5, wanted: 24 },
    });
  });

  it('passes on a doubt that leaves nothing to grade, and lets others be warnings', () => {
    const doubted = (code: string) => ({
      ...take,
      alignment: { ...alignment, doubt: { code, facts: { slots: 24 } } },
    });
    expect(whyNotGradable(doubted('nothing-fits'))).toEqual({ code: 'nothing-fits', facts: { slots: 24 } });
    expect(whyNotGradable(doubted('many-unmatched'))?.code).toBe('many-unmatched');
    expect(whyNotGradable(doubted('phase-not-told'))).toBeNull();
  });

  it('counts only strokes of graded runs', () => {
    const segments = alignment.segments.map((segment) => ({ ...segment, state: 'abandoned' as const }));
    expect(whyNotGradable({ ...take, alignment: { ...alignment, segments } })).toEqual({
      code: 'too-few-on-exercise',
      facts: { strokes: hearing.sounds.length, graded: 0, wanted: 24 },
    });
  });
});

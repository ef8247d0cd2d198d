import { describe, expect, it } from 'vitest';
import type { Score } from '../../../src/core/result/take-result.ts';
import { wordOfScore } from '../../../src/core/scoring/score-curve.ts';
import type { Scores } from '../../../src/core/scoring/score-take.ts';
import { isTempoAdvice, startTempo, tempoAdvice } from '../../../src/core/scoring/tempo-advice.ts';

const score = (value: number): Score => ({ score: value, low: value, high: value, word: wordOfScore(value) });
const scores = (dimensions: Record<string, number>): Scores => ({
  rubric: 'steady',
  overall: score(70),
  dimensions: Object.entries(dimensions).map(([id, value]) => ({ id, score: score(value), measures: [] })),
});
const secure = scores({ evenness: 90, dynamics: 88, hands: 85 });

describe('tempoAdvice', () => {
  it('goes about 10 % down when evenness and dynamics are both not yet there', () => {
    const both = scores({ evenness: 50, dynamics: 55 });
    expect(tempoAdvice({ scores: both, bpm: 120 })).toEqual({
      code: 'tempo-down',
      facts: { bpm: 120, toBpm: 108 },
    });
    expect(tempoAdvice({ scores: both, bpm: null })).toEqual({ code: 'tempo-down', facts: {} });
  });

  it('goes down for neither of them alone, nor for what is nearly there', () => {
    for (const dimensions of [
      { evenness: 90, dynamics: 50 },
      { evenness: 50, dynamics: 90 },
      { evenness: 60, dynamics: 50 },
      { evenness: 50, dynamics: 60 },
      { dynamics: 50 },
      { evenness: 50 },
    ])
      expect(tempoAdvice({ scores: scores(dimensions), bpm: 120 })?.code).toBe('tempo-stay');
  });

  it('asks for rest, not for a tempo, where the end gave way', () => {
    expect(tempoAdvice({ scores: secure, bpm: 100, fading: true })).toEqual({
      code: 'tempo-after-rest',
      facts: { bpm: 100 },
    });
    expect(tempoAdvice({ scores: secure, bpm: 100, fading: true, discomfort: true })?.code).toBe(
      'tempo-waits-for-discomfort',
    );
  });

  it('never advises below 40 BPM', () => {
    const both = scores({ evenness: 50, dynamics: 55 });
    expect(tempoAdvice({ scores: both, bpm: 42 })).toEqual({
      code: 'tempo-stay',
      facts: { bpm: 42, dimension: 'evenness' },
    });
    expect(tempoAdvice({ scores: both, bpm: 44 })).toMatchObject({
      code: 'tempo-down',
      facts: { toBpm: 40 },
    });
  });

  it('stays while one dimension is short and names the weakest', () => {
    const one = scores({ evenness: 50, dynamics: 90, hands: 40 });
    expect(tempoAdvice({ scores: one, bpm: 100 })).toEqual({
      code: 'tempo-stay',
      facts: { bpm: 100, dimension: 'hands' },
    });
  });

  it('wants two days before going up, by 4 to 6 BPM', () => {
    const facts = { bpm: 100, fromBpm: 104, toBpm: 106 };
    expect(tempoAdvice({ scores: secure, bpm: 100 })).toEqual({ code: 'tempo-needs-second-day', facts });
    expect(tempoAdvice({ scores: secure, bpm: 100, cleanOnAnotherDay: true })).toEqual({
      code: 'tempo-up',
      facts,
    });
  });

  it.each([secure, scores({ evenness: 10, dynamics: 10 }), null])(
    'gives no tempo at all when discomfort was noted',
    (any) => {
      const advice = tempoAdvice({ scores: any, bpm: 100, discomfort: true, cleanOnAnotherDay: true });
      expect(advice).toEqual({ code: 'tempo-waits-for-discomfort', facts: {} });
    },
  );

  it('names no tempo where the lines have several', () => {
    const advice = (fading: boolean) => tempoAdvice({ scores: secure, bpm: null, fading });
    expect(advice(false)).toEqual({ code: 'tempo-needs-second-day', facts: {} });
    expect(advice(true)).toEqual({ code: 'tempo-after-rest', facts: {} });
    const one = tempoAdvice({ scores: scores({ hands: 40 }), bpm: null });
    expect(one).toEqual({ code: 'tempo-stay', facts: { dimension: 'hands' } });
  });

  it('is silent without a score', () => {
    expect(tempoAdvice({ scores: null, bpm: 100 })).toBeNull();
  });
});

describe('startTempo', () => {
  it('begins 10 to 15 % below the cleanest tempo, or at 80 BPM', () => {
    expect(startTempo({ cleanestBpm: 120 })).toEqual({
      code: 'tempo-start',
      facts: { fromBpm: 102, toBpm: 108 },
    });
    expect(startTempo({ cleanestBpm: null }).facts).toEqual({ fromBpm: 80, toBpm: 80 });
    expect(startTempo({ cleanestBpm: 42 }).facts).toEqual({ fromBpm: 40, toBpm: 40 });
  });

  it('begins below the tempo tried last where none was clean, and not where one was', () => {
    expect(startTempo({ cleanestBpm: null, triedBpm: 120 })).toEqual({
      code: 'tempo-start-slower',
      facts: { bpm: 120, fromBpm: 102, toBpm: 108 },
    });
    expect(startTempo({ cleanestBpm: 100, triedBpm: 120 })).toEqual({
      code: 'tempo-start',
      facts: { fromBpm: 85, toBpm: 90 },
    });
  });

  it('waits when discomfort was noted', () => {
    expect(startTempo({ cleanestBpm: 120, discomfort: true })).toEqual({
      code: 'tempo-waits-for-discomfort',
      facts: {},
    });
  });
});

describe('isTempoAdvice', () => {
  it('tells the next tempo from faults of the tempo', () => {
    const codes = [
      'tempo-up',
      'tempo-stay',
      'tempo-waits-for-discomfort',
      'moving-tempo',
      'other-tempo',
      'taps-uneven',
    ];
    expect(codes.filter(isTempoAdvice)).toEqual(['tempo-up', 'tempo-stay', 'tempo-waits-for-discomfort']);
  });

  it('asks which tempo was meant where another one was played, and lets discomfort and fading go first', () => {
    const far = { scores: scores({ tempo: 52 }), bpm: 140, played: 70 };
    expect(tempoAdvice(far)).toEqual({ code: 'tempo-settle-first', facts: { bpm: 140, played: 70 } });
    expect(tempoAdvice({ ...far, discomfort: true })?.code).toBe('tempo-waits-for-discomfort');
    expect(tempoAdvice({ ...far, fading: true })?.code).toBe('tempo-after-rest');
    expect(tempoAdvice({ ...far, played: null })?.code).toBe('tempo-stay');
  });
});

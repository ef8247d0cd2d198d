import { describe, expect, it } from 'vitest';
import type { MeasureResult, Reason } from '../../../src/core/result/take-result.ts';
import { cannotTell } from '../../../src/core/scoring/cannot-tell.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import type { ScoredTake } from '../../../src/core/scoring/score-take.ts';
import { exampleResult } from '../../support/example-result.ts';
import { made } from './advice/made-input.ts';

const example = exampleResult();
const scored: ScoredTake = { state: 'scored', scores: example.scores!, leftOut: [] };
const base = {
  measures: [],
  lines: [{ ratioBand: null }],
  rubric: steady,
  scored,
  reference: 'heard-click',
  hands: 'as-written',
} as const;
const codes = (reasons: Reason[]) => reasons.map((r) => r.code);
const refused = (id: string, code: string): MeasureResult => ({
  id,
  unit: 'ms',
  scope: {},
  outcome: { state: 'not-measurable', reason: { code, facts: { share: 0.4 } } },
});

describe('cannotTell', () => {
  it('always says what sound never tells', () => {
    expect(codes(cannotTell(base))).toEqual(['never-from-sound']);
  });

  it('says nothing of ahead or behind without a click', () => {
    expect(codes(cannotTell({ ...base, reference: 'asked-tempo' }))).toContain('no-click');
    expect(codes(cannotTell({ ...base, reference: 'fitted-tempo' }))).toContain('no-click-no-tempo-asked');
    expect(codes(cannotTell({ ...base, reference: 'played-click' }))).not.toContain('no-click');
  });

  it('gathers refused measures by reason', () => {
    const measures = [
      refused('timing-spread', 'noisy'),
      refused('tap-spread', 'gated'),
      refused('placement', 'noisy'),
      refused('placement', 'noisy'),
    ];
    expect(cannotTell({ ...base, measures }).filter((r) => r.code === 'not-measured')).toEqual([
      { code: 'not-measured', facts: { share: 0.4, measures: 'timing-spread,placement', reason: 'noisy' } },
      { code: 'not-measured', facts: { share: 0.4, measures: 'tap-spread', reason: 'gated' } },
    ]);
  });

  it('keeps apart what one reason says with other facts, and passes over parts of the take', () => {
    const few = (id: string, strokes: number, hand?: 'L'): MeasureResult => ({
      id,
      unit: 'ms',
      scope: hand ? { hand } : {},
      outcome: { state: 'not-measurable', reason: { code: 'too-few-strokes', facts: { strokes } } },
    });
    const measures = [few('placement', 7), few('tap-spread', 9), few('timing-spread', 3, 'L')];
    const listed = cannotTell({ ...base, measures }).filter((r) => r.code === 'not-measured');
    expect(listed.map((r) => r.facts.measures)).toEqual(['placement', 'tap-spread']);
  });

  it('lists what another line would tell, but not what the exercise has no use for', () => {
    const absent = (id: string, code: string): MeasureResult => ({
      ...refused(id, code),
      outcome: { state: 'not-applicable', reason: { code, facts: {} } },
    });
    const measures = [absent('accent-bend', 'accent-goes-with-partial'), absent('separation', 'no-accents')];
    const listed = cannotTell({ ...base, measures }).filter((r) => r.code === 'not-measured');
    expect(listed.map((r) => r.facts)).toEqual([
      { measures: 'accent-bend', reason: 'accent-goes-with-partial' },
    ]);
  });

  it('says once that hands are not told', () => {
    const measures = [refused('hand-offset', 'hands-not-told')];
    expect(codes(cannotTell({ ...base, measures, hands: 'not-told' }))).toEqual([
      'hands-not-told',
      'never-from-sound',
    ]);
  });

  it('counts the strokes that an interval from secure to not yet would need: half as wide, four times as many', () => {
    // the room between 5 and 10 % halved is 2.5: an interval of ±5 has to halve, so 72 strokes become 288
    const measures = [made('timing-spread-share', 7, 5)];
    expect(cannotTell({ ...base, measures })[0]).toEqual({
      code: 'too-wide-to-tell',
      facts: { measures: 'timing-spread-share', has: 72, strokes: 288 },
    });
    const two = [...measures, made('placement-share', 5, 8)];
    expect(cannotTell({ ...base, measures: two })[0]?.facts).toEqual({
      measures: 'timing-spread-share,placement-share',
      has: 72,
      strokes: 72 * 4 ** 2,
    });
    expect(codes(cannotTell({ ...base, measures: [made('missed-and-extra', 0, 7)] }))).toEqual([
      'never-from-sound',
    ]);
    expect(codes(cannotTell({ ...base, measures: [made('timing-spread-share', 7, 1)] }))).toEqual([
      'never-from-sound',
    ]);
  });

  it('names what has no score', () => {
    const reason = { code: 'too-few-strokes-to-score', facts: { strokes: 9, needed: 24 } };
    expect(cannotTell({ ...base, scored: { state: 'not-scored', reason } })[0]).toEqual(reason);
    const fewer = { ...example.scores!, dimensions: example.scores!.dimensions.slice(1) };
    const reasons = cannotTell({ ...base, scored: { ...scored, scores: fewer } });
    expect(reasons[0]).toEqual({ code: 'dimension-not-scored', facts: { dimension: 'evenness' } });
  });

  it('says when hands are not told', () => {
    expect(codes(cannotTell({ ...base, hands: 'not-told' }))).toContain('hands-not-told');
  });
});

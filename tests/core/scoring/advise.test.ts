import { describe, expect, it } from 'vitest';
import type { MeasureResult } from '../../../src/core/result/take-result.ts';
import { advise } from '../../../src/core/scoring/advise.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../../src/core/scoring/score-take.ts';
import { made } from './advice/made-input.ts';

const lines = [{ ratioBand: null }];

function adviceFor(measures: MeasureResult[], more: { discomfort?: boolean; bpm?: number | null } = {}) {
  const scored = scoreTake({ measures, lines, strokes: 72, rubric: steady });
  const scores = scored.state === 'scored' ? scored.scores : null;
  return advise({ measures, lines, rubric: steady, scores, bpm: 100, ...more });
}

const clean = [
  made('timing-spread-share', 3, 1),
  made('placement-share', 1, 1),
  made('accent-bend-share', 1, 1),
  made('accent-to-tap-ratio', 12, 1),
  made('separation', 1, 0),
  made('tap-spread', 1, 0.3),
  made('accent-spread', 1, 0.3),
  made('hand-offset-share', 0.5, 1),
  made('tempo-change', 0.3, 0.5),
  made('missed-and-extra', 0, 0.4),
];
const withFaults = (...faults: MeasureResult[]) => [
  ...clean.filter((c) => !faults.some((f) => f.id === c.id)),
  ...faults,
];
const codes = (advice: ReturnType<typeof adviceFor>) => advice.map((a) => a.code);

describe('advise', () => {
  it('puts first what costs most and stops at three, the tempo after them', () => {
    const advice = adviceFor(
      withFaults(
        made('tempo-error', 5, 1),
        made('tap-spread', 4, 0.5),
        made('timing-spread-share', 14, 1),
        made('missed-and-extra', 6, 2),
        made('missed', 6, 2),
      ),
    );
    // By hand: (100 − score) × share: timing 56.0/6 = 9.3, missed 52.7/6 = 8.8, tempo 55.3/12 = 4.6, taps 53.6/30 = 1.8
    expect(codes(advice)).toEqual(['timing-uneven', 'strokes-missed', 'other-tempo', 'tempo-stay']);
  });

  it('gives the same advice whatever the order of the measures', () => {
    const faults = withFaults(
      made('tap-spread', 4, 0.5),
      made('accent-spread', 4, 0.5),
      made('timing-spread-share', 14, 1),
    );
    expect(adviceFor(faults.toReversed())).toEqual(adviceFor(faults));
  });

  it('says one of two findings that share a cause', () => {
    const both = adviceFor(withFaults(made('accent-to-tap-ratio', 3, 1), made('separation', 0.8, 0.1)));
    expect(codes(both)).toEqual(['taps-too-loud', 'tempo-stay']);
  });

  it('says so when everything is secure, and asks for a second day before the tempo goes up', () => {
    expect(codes(adviceFor(clean))).toEqual(['nothing-to-mend', 'tempo-needs-second-day']);
  });

  it('says so when nothing is sure', () => {
    expect(codes(adviceFor(withFaults(made('timing-spread-share', 7, 4))))).toEqual([
      'nothing-stands-out',
      'tempo-stay',
    ]);
  });

  it('puts discomfort first and leaves the tempo alone', () => {
    const advice = adviceFor(withFaults(made('tap-spread', 4, 0.5)), { discomfort: true });
    expect(codes(advice)).toEqual(['tempo-waits-for-discomfort', 'taps-uneven']);
  });

  it('points at no more than eight strokes', () => {
    const many = Array.from({ length: 12 }, (_, i) => i);
    const advice = adviceFor(withFaults(made('tap-spread', 4, 0.5, {}, many)));
    expect(advice[0]!.strokes).toEqual(many.slice(0, 8));
  });
});

import { describe, expect, it } from 'vitest';
import { refuseSpoiled } from '../../../src/core/recording-check/refuse-spoiled.ts';
import type { Outcome } from '../../../src/core/result/take-result.ts';

const gated = { code: 'gated', facts: { fallsDb: 9 }, spoils: ['missed', 'tap-spread'] };
const refused = (code: string): Outcome => ({ state: 'not-measurable', reason: { code, facts: {} } });
const spoilt = {
  state: 'not-measurable',
  reason: { code: 'spoiled-gated', facts: { fallsDb: 9 } },
};
const outcomeOf = (id: string, outcome: Outcome) => refuseSpoiled([{ id, outcome }], [gated])[0]!.outcome;
const figure: Outcome = { state: 'measured', value: 1, low: 0, high: 2, strokes: 48, pointsAt: [] };

describe('refuseSpoiled', () => {
  it('takes away a figure that a finding spoils, and no other', () => {
    expect(outcomeOf('missed', figure)).toEqual(spoilt);
    expect(outcomeOf('doubled', figure)).toEqual(figure);
  });

  it('tells the finding where strokes were found too coarsely for a figure: it can be mended', () => {
    expect(outcomeOf('tap-spread', refused('found-too-coarsely'))).toEqual(spoilt);
    expect(outcomeOf('accent-spread', refused('found-too-coarsely'))).toEqual(refused('found-too-coarsely'));
  });

  it("leaves what lacks strokes or doesn't apply its own reason", () => {
    expect(outcomeOf('tap-spread', refused('too-few-strokes'))).toEqual(refused('too-few-strokes'));
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { compareSetUp } from '../../../src/core/progress/compare-set-up.ts';
import { handForReference, type SetUpReference } from '../../../src/core/progress/set-up-reference.ts';
import { summaryOf } from '../../../src/core/stats/mean-difference.ts';
import { padStroke } from '../grading/made-take.ts';

/** Eight strokes a hand of a player whose strokes scatter by `sd`. */
const played = (seed: number, levelDb: number, sd = 1.2, left = 0): SetUpReference => {
  const random = seeded(seed);
  const hand = (mean: number) => Array.from({ length: 8 }, () => random.normal(mean, sd));
  return { right: summaryOf(hand(levelDb)), left: summaryOf(hand(levelDb + left)) };
};

describe('compareSetUp', () => {
  it('works out the worked example', () => {
    const now = { right: summaryOf([-19, -20, -21]), left: summaryOf([-21, -22, -23]) };
    const last = { right: summaryOf([-20, -21, -22]), left: summaryOf([-22, -23, -24]) };
    const { shift } = compareSetUp(now, last);
    // Each hand: difference 1, se √(1/3 + 1/3) = 0.8165 with 4 degrees; both: se 0.5774 with 8, t₀.₉₇₅ = 2.3060
    // (Student's table).
    expect(shift.value).toBeCloseTo(1, 9);
    expect(shift.high - shift.value).toBeCloseTo(2.306 * 0.57735, 3);
  });

  it('holds the true shift in 95 of 100 intervals', () => {
    const runs = 1000;
    let held = 0;
    for (let seed = 0; seed < runs; seed++) {
      const { shift } = compareSetUp(played(seed, -18.5), played(seed + 5000, -20));
      if (shift.low <= 1.5 && shift.high >= 1.5) held++;
    }
    // Three standard errors of a share of 0.95 in 1000.
    expect(Math.abs(held / runs - 0.95)).toBeLessThan(0.021);
  });

  it('says alike, different and not told each where it should', () => {
    const verdicts = (shift: number, sd: number) =>
      Array.from({ length: 200 }, (_, seed) =>
        compareSetUp(played(seed, -20 + shift, sd), played(seed + 900, -20, sd)),
      ).map(({ verdict }) => verdict);
    const share = (all: readonly string[], verdict: string) => all.filter((v) => v === verdict).length / 200;
    expect(share(verdicts(0, 1.2), 'alike')).toBeGreaterThan(0.9);
    expect(share(verdicts(6, 1.2), 'different')).toBeGreaterThan(0.95);
    // At the margin itself a wrong "alike" or "different" is as rare as the interval says: one in forty each.
    expect(share(verdicts(2, 1.2), 'alike')).toBeLessThan(0.06);
    expect(share(verdicts(2, 1.2), 'different')).toBeLessThan(0.06);
    expect(share(verdicts(0, 4), 'not-told')).toBeGreaterThan(0.5);
  });

  it("doesn't call a microphone that moved to one side alike", () => {
    const moved = compareSetUp(played(1, -17, 0.8, -6), played(2, -20, 0.8));
    expect(Math.abs(moved.shift.value)).toBeLessThan(1);
    expect(moved.verdict).toBe('not-told');
    expect(moved.handsApart.low).toBeGreaterThan(2);
  });
});

describe('handForReference', () => {
  const strokes = (levels: readonly number[]) => levels.map((level, i) => padStroke(i, level));
  it('takes about eight strokes at one height', () => {
    expect(handForReference([])).toEqual({ state: 'too-few', strokes: 0 });
    expect(handForReference(strokes([-20, -21, -19, -20, -22, -20, -20])).state).toBe('heard');
    expect(handForReference(strokes(Array(14).fill(-20)))).toEqual({ state: 'too-many', strokes: 14 });
    expect(handForReference(strokes([-10, -30, -10, -30, -10, -30, -10, -30])).state).toBe('uneven');
  });

  it('counts nothing but strokes', () => {
    const talk = { ...padStroke(9), sound: 'voice' as const };
    const heard = handForReference([...strokes(Array(8).fill(-20)), talk]);
    expect(heard.state === 'heard' && heard.levels.n).toBe(8);
  });
});

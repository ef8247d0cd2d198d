import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { playedClickOf } from '../../../src/page/recording/played-click-of.ts';

const parsed = parseSheet('tempo: 120\n>RLR >LRL ; times: 8');
if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
const plan = planClicks(parsed.sheet, {
  ...plainClick,
  subdivisions: 3,
  silence: { heard: 1, lengths: [1, 1] },
});

describe('playedClickOf', () => {
  it('has the beats, count-in and silent ones included, where the recording hears them', () => {
    const { times, calibrated, uncertaintyMs } = playedClickOf(plan, 0.4, { latency: 0.05, se: 0.001 });
    // Four beats counted in and sixteen played, half a second apart.
    expect(times).toHaveLength(20);
    times.forEach((time, n) => {
      expect(time).toBeCloseTo(0.45 + n / 2, 9);
    });
    expect(plan.clicks.some(({ audible }) => !audible)).toBe(true);
    expect({ calibrated, uncertaintyMs }).toEqual({ calibrated: true, uncertaintyMs: 1 });
  });

  it("tells which of them sounded: not those of the plan's silences, nor those held back while it ran", () => {
    const silent = (silences?: { from: number; to: number }[]) =>
      playedClickOf(plan, 0.4, null, silences).audible!.flatMap((heard, i) => (heard ? [] : [i]));
    // A bar is counted in; of the four that follow the second and the fourth are silent.
    expect(silent()).toEqual([8, 9, 10, 11, 16, 17, 18, 19]);
    expect(silent([{ from: 6, to: 8 }])).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19]);
    expect(playedClickOf(planClicks(parsed.sheet, plainClick), 0.4, null)).not.toHaveProperty('audible');
  });

  it("isn't calibrated without a delay", () => {
    expect(playedClickOf(plan, 0.4, null)).toMatchObject({ calibrated: false });
  });
});

import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { silentStretches } from '../../../src/core/click-track/silent-stretches.ts';
import { wanderInSilence } from '../../../src/core/click-track/wander-in-silence.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

const parsed = parseSheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 6\n');
if (!parsed.ok) throw new Error('no sheet');
const plan = planClicks(parsed.sheet, { ...plainClick, silence: { heard: 2, lengths: [1, 2] } });
const stretches = silentStretches(plan);
const due = Array.from({ length: 72 }, (_, i) => plan.firstBeat + i / 6);

describe('silentStretches', () => {
  it('are the bars left to the player', () => {
    expect(stretches).toEqual(
      [
        { from: 6, to: 8 },
        { from: 12, to: 14 },
      ].map(({ from, to }) => ({ from, to })),
    );
  });
});

describe('wanderInSilence', () => {
  it('finds a wander that is there, whatever the delay of each stretch, and its interval holds it', () => {
    const strokes = due.map((time, i) => ({
      time: time + 0.08 + 0.005 * ((time - 6) / 0.5) + 0.002 * Math.sin(i * 2.4),
      due: time,
      beatSeconds: 0.5,
    }));
    const found = wanderInSilence(strokes, stretches)!;
    expect(found.low).toBeLessThan(5);
    expect(found.high).toBeGreaterThan(5);
    expect(found.high - found.low).toBeLessThan(3);
  });

  it('is the slope of an independent least-squares line for one stretch', () => {
    const one = [{ from: 6, to: 8 }];
    const strokes = due.map((time, i) => ({
      time: time + 0.01 * Math.cos(i * i),
      due: time,
      beatSeconds: 0.5,
    }));
    const inside = strokes.filter((stroke) => stroke.due >= 6 - 1e-9 && stroke.due < 8 - 1e-9);
    const { m } = linearRegression(inside.map((s) => [(s.due - 6) / 0.5, 1000 * (s.time - s.due)]));
    expect(wanderInSilence(strokes, one)!.msPerBeat).toBeCloseTo(m, 9);
    expect(wanderInSilence(strokes, one)!.beats).toBe(4);
  });

  it('says nothing where too little was played in silence', () => {
    expect(wanderInSilence([], stretches)).toBeNull();
    expect(
      wanderInSilence(
        due.slice(0, 20).map((time) => ({ time, due: time, beatSeconds: 0.5 })),
        stretches,
      ),
    ).toBeNull();
    expect(
      wanderInSilence(
        due.map((time) => ({ time, due: time, beatSeconds: 0.5 })),
        [],
      ),
    ).toBeNull();
  });
});

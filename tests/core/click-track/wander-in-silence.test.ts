import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { silentStretches } from '../../../src/core/click-track/silent-stretches.ts';
import { wanderInSilence } from '../../../src/core/click-track/wander-in-silence.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

const parsed = parseSheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 11\n');
if (!parsed.ok) throw new Error('no sheet');
const plan = planClicks(parsed.sheet, { ...plainClick, silence: { heard: 2, lengths: [1, 2] } });
const stretches = silentStretches(plan);
const due = Array.from({ length: 132 }, (_, i) => plan.firstBeat + i / 6);

describe('silentStretches', () => {
  it('are the bars left to the player', () => {
    expect(stretches).toEqual(
      [
        { from: 6, to: 8 },
        { from: 12, to: 16 },
        { from: 20, to: 24 },
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

  it('is the mean of independent least-squares lines, weighted by their beats', () => {
    const strokes = due.map((time, i) => ({
      time: time + 0.01 * Math.cos(i * i),
      due: time,
      beatSeconds: 0.5,
    }));
    const lines = stretches.map(({ from, to }) => {
      const inside = strokes.filter((stroke) => stroke.due >= from - 1e-9 && stroke.due < to - 1e-9);
      const { m } = linearRegression(inside.map((s) => [(s.due - from) / 0.5, 1000 * (s.time - s.due)]));
      return { m, beats: Math.round((to - from) / 0.5) };
    });
    const beats = lines.reduce((sum, one) => sum + one.beats, 0);
    const found = wanderInSilence(strokes, stretches)!;
    expect(found.msPerBeat).toBeCloseTo(lines.reduce((sum, one) => sum + one.m * one.beats, 0) / beats, 9);
    expect(found.beats).toBe(beats);
    expect(wanderInSilence(strokes, stretches.slice(0, 2))).toBeNull();
  });

  // Truth: 2 ms a beat, strokes scattered by 5 ms, and a beat that drifts as a random walk of so many ms a beat.
  it.each([
    [0, [8, 8, 8, 8]],
    [1, [4, 8, 16]],
    [3, [4, 4, 4, 4, 4, 4]],
    [3, [4, 8, 16, 16, 16]],
    [6, [16, 16, 16, 16]],
  ])('covers the truth where the beat drifts by %f ms a beat, silences of %j beats', (drift, lengths) => {
    const random = seeded(`wander ${drift} ${lengths}`);
    const takes = 800;
    let covered = 0;
    for (let take = 0; take < takes; take++) {
      const silences = lengths.map((beats, k) => ({ from: 100 * k, to: 100 * k + beats / 2 }));
      const strokes = silences.flatMap(({ from }, k) => {
        let walked = 0;
        return Array.from({ length: 3 * lengths[k]! }, (_, i) => {
          walked += (drift / Math.sqrt(3)) * random.normal();
          const at = from + i / 6;
          return {
            due: at,
            time: at + 0.001 * ((2 * i) / 3 + walked + random.normal(0, 5)),
            beatSeconds: 0.5,
          };
        });
      });
      const { low, high } = wanderInSilence(strokes, silences)!;
      if (low <= 2 && high >= 2) covered += 1;
    }
    expect(covered / takes).toBeGreaterThan(0.92);
    expect(covered / takes).toBeLessThan(0.995);
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

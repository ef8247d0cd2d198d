import { describe, expect, it } from 'vitest';
import { dropOut } from '../../../fixtures/generator/damage/drop-out.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { lostStretches } from '../../../src/core/recording-check/lost-stretches.ts';
import { phaseSteps } from '../../../src/core/recording-check/phase-steps.ts';
import { withoutBetween } from '../../../src/core/recording-check/without-between.ts';

const rate = 8000;
const random = seeded('seams');
const played = Array.from({ length: 140 }, (_, i) => 1 + 0.2 * i + 0.004 * random.normal());

/** Strokes and seams of a recording that loses 80 ms at nine places, as heard where each seam is one more attack. */
function withSeams(): { strokes: number[]; all: number[] } {
  const marked = new Float32Array(30 * rate);
  for (const time of played) marked[Math.round(time * rate)] = 1;
  const { samples, at } = dropOut(marked, rate, { kind: 'lost', ms: 80, aMinute: 18 }, seeded('lost'));
  const strokes = [...samples.keys()].filter((i) => samples[i] === 1).map((i) => i / rate);
  return { strokes, all: [...strokes, ...at].sort((a, b) => a - b) };
}

describe('times without those between', () => {
  it('are the strokes where one more attack stands between two', () => {
    expect(withoutBetween([0, 0.2, 0.4, 0.47, 0.6, 0.8])).toEqual([0, 0.2, 0.4, 0.6, 0.8]);
    expect(withoutBetween([])).toEqual([]);
    expect(withoutBetween([1])).toEqual([1]);
  });

  it('leave even times and a rest alone', () => {
    expect(withoutBetween(played)).toEqual(played);
    const rest = [0, 0.2, 0.4, 1, 1.2, 1.4, 1.6];
    expect(withoutBetween(rest)).toEqual(rest);
  });

  it('show lost sound whose seams are heard as attacks, and none where nothing is lost', () => {
    const { strokes, all } = withSeams();
    expect(phaseSteps(strokes).length).toBeGreaterThanOrEqual(5);
    expect(phaseSteps(all)).toHaveLength(0);
    expect(lostStretches({ strokes: [] }, all).length).toBeGreaterThanOrEqual(5);
    const extra = Array.from({ length: 9 }, () => random.between(1, 28));
    expect(
      lostStretches(
        { strokes: [] },
        [...played, ...extra].sort((a, b) => a - b),
      ),
    ).toHaveLength(0);
  });
});

import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import type { PlayedStroke } from '../../../src/core/measures/played-stroke.ts';
import { lostStretches } from '../../../src/core/recording-check/lost-stretches.ts';

const beat = 0.54;
/** Triplets with a player's scatter and habits; `lost` s are missing before some strokes. */
function played({ lost = new Map<number, number>(), scatter = 0.006, count = 108, seed = 1 }) {
  const random = seeded(`lost ${seed}`);
  let early = 0;
  const strokes = Array.from({ length: count }, (_, i) => {
    early += lost.get(i) ?? 0;
    const time = 1 + (beat * i) / 3 + [0, -0.007, 0.005][i % 3]! + scatter * random.normal() - early;
    return { time, position: i / 3, stretch: 0, slot: { beatTime: i / 3, accent: i % 3 === 0 } };
  });
  return { strokes: strokes as unknown as PlayedStroke[] };
}

describe('lostStretches', () => {
  it('finds where and how much was lost', () => {
    const found = lostStretches(played({ lost: new Map([30, 55, 80].map((i) => [i, 0.04])) }));
    expect(found).toHaveLength(3);
    for (const { seconds } of found) expect(Math.abs(seconds - 0.04)).toBeLessThan(0.02);
    expect(found[0]!.time).toBeCloseTo(1 + (beat * 30) / 3 - 0.04, 1);
  });

  it('is silent for players: scatter, one stumble, steps to and fro, steps of any size', () => {
    for (let seed = 1; seed <= 40; seed++)
      for (const scatter of [0.003, 0.008, 0.015])
        expect(lostStretches(played({ scatter, seed }))).toEqual([]);
    expect(lostStretches(played({ lost: new Map([[50, 0.06]]) }))).toEqual([]);
    const toAndFro = new Map([20, 40, 60, 80].map((i, k) => [i, k % 2 === 0 ? 0.05 : -0.05]));
    expect(lostStretches(played({ lost: toAndFro }))).toEqual([]);
    const any = new Map([20, 40, 60, 80].map((i, k) => [i, [0.03, 0.07, 0.13, 0.21][k]!]));
    expect(lostStretches(played({ lost: any, scatter: 0.003 }))).toEqual([]);
  });

  it.each<[string, (i: number) => number]>([
    ['begins again faster', (i) => (i < 100 ? 1.2 : 1.05)],
    ['begins again slower', (i) => (i < 40 ? 1.05 : 1.2)],
    ['runs away for a while and comes back', (i) => (i > 50 && i < 90 ? 1.05 : 1.2)],
    ['gets faster all the time', (i) => 1.2 - i / 1000],
  ])('takes a player who %s for no lost sound', (_, beatAt) => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = seeded(`tempo ${seed}`);
      let time = 1;
      const strokes = Array.from({ length: 144 }, (_, i) => {
        const stroke = {
          time: time + 0.006 * random.normal(),
          slot: { beatTime: i / 3, accent: i % 3 === 0 },
        };
        time += beatAt(i) / 3;
        return stroke as unknown as PlayedStroke;
      });
      expect(lostStretches({ strokes })).toEqual([]);
      const sounds = strokes.map((stroke) => stroke.time);
      expect(lostStretches({ strokes: [] }, sounds)).toEqual([]);
    }
  });

  it('asks the sounds where the strokes found no way through the sheet, and no grace note or rest is lost sound', () => {
    const times = (lost: Map<number, number>) => played({ lost, seed: 7 }).strokes.map(({ time }) => time);
    const blocks = times(new Map([20, 40, 60, 80].map((i) => [i, 0.08])));
    const found = lostStretches({ strokes: [] }, blocks);
    // One beside a habit of the player may differ too much from the others; three are enough to tell.
    expect(found.length).toBeGreaterThanOrEqual(3);
    for (const { seconds } of found) expect(Math.abs(seconds - 0.08)).toBeLessThan(0.03);
    const plain = times(new Map());
    expect(lostStretches({ strokes: [] }, plain)).toEqual([]);
    const graces = plain.flatMap((time, i) => (i % 9 === 4 ? [time - 0.04, time] : [time]));
    expect(lostStretches({ strokes: [] }, graces)).toEqual([]);
    const doubled = plain.flatMap((time, i) => (i % 10 === 4 ? [time, time + 0.06] : [time]));
    expect(lostStretches({ strokes: [] }, doubled)).toEqual([]);
    expect(
      lostStretches(
        { strokes: [] },
        plain.filter((_, i) => i % 12 < 9),
      ),
    ).toEqual([]);
  });

  it('says nothing of few strokes', () => {
    expect(lostStretches(played({ count: 20, lost: new Map([5, 10].map((i) => [i, 0.08])) }))).toEqual([]);
    expect(lostStretches({ strokes: [] })).toEqual([]);
  });
});

import { median } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { silentBars } from '../../../src/core/click-track/silent-bars.ts';
import type { Slot } from '../../../src/core/exercise/slot.ts';
import type { Performance } from '../../../src/core/measures/performance.ts';
import { silentWander } from '../../../src/core/measures/silent-wander.ts';
import { sentence } from '../../../src/core/result/sentences.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import {
  asynchronies,
  machine,
  normalFrom,
  type Player,
  players,
  simulatedPerformance,
  uniformFrom,
} from './simulated-performance.ts';

const beat = 0.5;
const start = 2;

/** Bars of four beats: two that sound, then so many silent ones, over and over. */
function bars(lengths: readonly number[], count: number): boolean[] {
  const silent = silentBars({ heard: 2, lengths });
  return Array.from({ length: count }, (_, bar) => silent(bar));
}

function silencesIn(silent: readonly boolean[]): Performance['silences'] {
  return silent.flatMap((one, bar) => {
    if (!one || silent[bar - 1]) return [];
    const next = silent.findIndex((other, i) => i > bar && !other);
    const at = (index: number) => start + 4 * beat * index;
    return [{ from: at(bar), to: at(next < 0 ? silent.length : next) }];
  });
}

const bases = new Map<string, Performance>();

/** A take of so many bars of triplets with silences in it, every stroke `late` seconds after its time. */
function played(lengths: readonly number[], count: number, late: (slot: Slot) => number): Performance {
  const key = `${lengths} ${count}`;
  const base =
    bases.get(key) ??
    simulatedPerformance({
      sheet: `tempo: ${60 / beat}\n>RLR >LRL >RLR >LRL; x${count}`,
      ...{ seed: 1, player: machine, timeSe: 0 },
    });
  bases.set(key, base);
  return {
    ...base,
    strokes: base.strokes.map((stroke) => ({ ...stroke, time: stroke.time + late(stroke.slot) })),
    silences: silencesIn(bars(lengths, count)),
  };
}

/** Deviations of a player model, by slot. */
function scatter(player: Player, count: number, seed: number) {
  const late = asynchronies(player, 12 * count, normalFrom(uniformFrom(seed)));
  return (slot: Slot) => late[slot.index]!;
}

/**
 * Lateness, s, of a player whose beats come later by `drift` each while the click is silent, and by a random walk of
 * `walk` a beat besides, and who finds back to the click within a beat or two.
 */
function wandering(drift: number, walk: number, lengths: readonly number[], count: number, seed: number) {
  const silent = bars(lengths, count);
  const random = seeded(`silence ${seed}`);
  let late = 0;
  const course = Array.from({ length: 12 * count }, (_, stroke) => {
    if (silent[Math.floor(stroke / 12)]) late += drift / 3 + (walk / Math.sqrt(3)) * random.normal();
    else late *= 0.7;
    return late;
  });
  return (slot: Slot) => course[slot.index]!;
}

/** The median of the slopes of all pairs. */
const medianSlope = (points: readonly (readonly [number, number])[]) =>
  median(points.flatMap(([x, y], i) => points.slice(i + 1).map(([u, v]) => (v - y) / (u - x))));

describe('silentWander', () => {
  it('of a machine whose silent beats come 5 ms later each is 5 ms, whatever the delay of the recording', () => {
    const late = wandering(0.005, 0, [2], 24, 1);
    for (const [latency, least] of [
      [0, 144],
      // The last of them lie past the silence then.
      [0.05, 132],
    ] as const) {
      const take = played([2], 24, (slot) => latency + late(slot));
      const { value, strokes } = figureOf(silentWander, take);
      expect(value).toBeCloseTo(5, 6);
      expect(strokes).toBeGreaterThanOrEqual(least);
      expect(strokes).toBeLessThanOrEqual(144);
    }
  });

  it("is the mean of the silences' median slopes, weighted by their beats", () => {
    const take = played([1, 2, 4], 13, scatter(players['independent jitter']!, 13, 7));
    const lines = take.silences.map(({ from, to }) => {
      const inside = take.strokes.filter(({ time }) => time >= from - beat / 6 && time < to - beat / 6);
      const slope = medianSlope(
        inside.map(({ time, position }) => [position, 1000 * (time - beat * position)]),
      );
      return { slope, beats: Math.round((to - from) / beat) };
    });
    expect(lines.map(({ beats }) => beats)).toEqual([4, 8, 16]);
    const beats = lines.reduce((sum, one) => sum + one.beats, 0);
    const { value } = figureOf(silentWander, take);
    expect(value).toBeCloseTo(lines.reduce((sum, one) => sum + one.slope * one.beats, 0) / beats, 9);
  });

  // Bars of each silence; bars in all; ms that each beat comes later; ms a beat of random walk.
  it.each([
    ['independent jitter', [1], 9, 2, 0],
    ['independent jitter', [2], 24, 0, 3],
    ['middling corrector', [1, 2, 4, 8], 35, -3, 3],
    ['slow corrector', [1, 2, 4], 13, 2, 1],
    ['quick corrector', [4], 36, 5, 6],
    ['no click', [2, 8], 34, 0, 0],
  ] as const)('covers the truth: %s, silences of %j bars', (name, lengths, count, drift, walk) => {
    const runs = 1000;
    const { share, mean, measured } = coverage(
      runs,
      (seed) => {
        const own = scatter(players[name]!, count, seed);
        const course = wandering(drift / 1000, walk / 1000, lengths, count, seed);
        return played(lengths, count, (slot) => own(slot) + course(slot));
      },
      drift,
      silentWander,
    );
    expect(measured).toBe(runs);
    expect(Math.abs(mean - drift)).toBeLessThan(0.4);
    const { least, most } = coverageBounds(runs);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });

  it("isn't bent by a stroke that landed far off", () => {
    const own = scatter(players['quick corrector']!, 12, 3);
    const value = (far: number) =>
      figureOf(
        silentWander,
        played([1], 12, (slot) => own(slot) + (slot.index === 12 * 2 + 11 ? far : 0)),
      ).value;
    // By least squares: 60 ms × 1.83 beats / 15.9 beats², a fourth of it in the mean of four silences: 1.7 ms.
    expect(Math.abs(value(0.06) - value(0))).toBeLessThan(1);
  });

  it('shows where the silences ended over which the beat moved most', () => {
    const take = played([1, 4], 14, wandering(0.004, 0, [1, 4], 14, 1));
    const { pointsAt } = figureOf(silentWander, take);
    const shown = pointsAt.map((at) => take.strokes.find(({ stroke }) => stroke === at)!.slot);
    // Bars that end the first and the second long silence, then one of the short ones.
    expect(shown.slice(0, 2).map(({ repeat, beat: at, partial }) => [repeat, at, partial])).toEqual([
      [8, 3, 3],
      [13, 3, 3],
    ]);
    expect(shown).toHaveLength(3);
  });

  it('says what one silence or two gave, without a range', () => {
    const two = outcomeOf(silentWander, played([2], 8, wandering(0.005, 0, [2], 8, 1)));
    if (two.state !== 'not-measurable') throw new Error(two.state);
    const { code, facts } = two.reason;
    expect(code).toBe('too-few-silences');
    expect(facts).toMatchObject({ silences: 2, needed: 3, beats: 16 });
    expect(facts.msPerBeat).toBeCloseTo(5, 6);
    expect(sentence(two.reason)).toBe(
      'In the two silences of this take, 16 beats, each beat came 5.0 ms later than the one before. It takes 3 silences to say how sure that is: play longer, or with more bars left silent.',
    );
  });

  it('says where nothing was played in silence, and where the click never was silent', () => {
    const take = played([2], 8, () => 0);
    const silent = { ...take, strokes: take.strokes.filter(({ time }) => time < take.silences[0]!.from) };
    expect(outcomeOf(silentWander, silent)).toMatchObject({
      state: 'not-measurable',
      reason: { code: 'no-stroke-in-silence' },
    });
    expect(outcomeOf(silentWander, { ...take, silences: [] })).toMatchObject({
      state: 'not-applicable',
      reason: { code: 'click-never-silent' },
    });
  });
});

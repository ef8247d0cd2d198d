import { describe, expect, it } from 'vitest';
import { accentBend } from '../../../src/core/measures/accent-bend.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const fixed = 'tempo: 110\n>RLR >LRL; x24';
/** The accent moves over all partials, and one line leaves room for strokes away from any accent. */
const moving = 'tempo: 110\n>RLR >LRL; x8\nR>LR L>RL; x8\nRL>R LR>L; x8\n>RLR LRL RLR LRL; x8';
const placesOf = (performance: ReturnType<typeof simulatedPerformance>) =>
  new Map(performance.strokes.map((s) => [s.slot.index, s.place]));

function take(sheet: string, late: Record<string, number>, rest = {}) {
  const places = placesOf(simulatedPerformance({ sheet, seed: 1, player: machine }));
  return simulatedPerformance({
    sheet,
    seed: 1,
    player: machine,
    timeSe: 0,
    habit: (slot) =>
      (late[places.get(slot.index)!] ?? 0) +
      (slot.partial === 2 ? 0.003 : 0) +
      (slot.hand === 'L' ? 0.002 : 0),
    ...rest,
  });
}

// Lines with fewer accents carry less of a bend; the model lets lines start together, which costs hundredths of a ms.
describe('accent-bend', () => {
  it('of a machine that squeezes after the accent is the squeeze, whatever its partials and hands do', () => {
    const performance = take(moving, { after: -0.01 });
    expect(figureOf(accentBend, performance, { place: 'after' }).value).toBeCloseTo(-10, 1);
    expect(figureOf(accentBend, performance, { place: 'on' }).value).toBeGreaterThan(0);
    expect(figureOf(accentBend, performance).value).toBeCloseTo(10, 1);
  });

  it('holds each of three bends against all other strokes', () => {
    const late: Record<string, number> = { before: -0.004, on: 0.002, after: 0.006, other: 0 };
    const performance = take(moving, late);
    const { strokes } = performance;
    for (const place of ['before', 'on', 'after'] as const) {
      const others = strokes.filter((s) => s.place !== place).map((s) => late[s.place]!);
      const truth = 1000 * (late[place]! - others.reduce((a, b) => a + b, 0) / others.length);
      expect(figureOf(accentBend, performance, { place }).value).toBeCloseTo(truth, 1);
    }
  });

  it('says so where accent and partial always go together', () => {
    for (const scope of [{}, { place: 'on' }, { place: 'after' }] as const) {
      expect(outcomeOf(accentBend, take(fixed, {}), scope)).toMatchObject({
        state: 'not-applicable',
        reason: { code: 'accent-goes-with-partial' },
      });
    }
  });

  it('has nothing to say without accents or without taps', () => {
    expect(outcomeOf(accentBend, take('tempo: 110\nRLR LRL; x24', {}))).toMatchObject({
      reason: { code: 'no-accents' },
    });
    expect(outcomeOf(accentBend, take('tempo: 110\n>R>L>R >L>R>L; x24', {}))).toMatchObject({
      reason: { code: 'no-taps' },
    });
  });

  it('holds the truth of a player', () => {
    const runs = 300;
    const play = (seed: number) =>
      take(moving, { after: -0.004 }, { seed, player: players['middling corrector']! });
    const { share, mean } = coverage(runs, play, -4, accentBend, { place: 'after' });
    const { least, most } = coverageBounds(runs);
    expect(Math.abs(mean + 4)).toBeLessThan(0.2);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });
});

import { describe, expect, it } from 'vitest';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const habit = (slot: { partial: number; hand: string }) =>
  [0.003, -0.002, -0.001][slot.partial - 1]! + (slot.hand === 'L' ? 0.002 : -0.002);
const play = (rest = {}, sheet = 'tempo: 100\n>RLR >LRL; x24') =>
  simulatedPerformance({ sheet, seed: 2, player: machine, timeSe: 0, habit, ...rest });

describe('fitTimingModel', () => {
  it('takes a machine with habits apart without a rest', () => {
    const timing = play().timing!;
    timing.residual.forEach((r) => {
      expect(r).toBeCloseTo(0, 9);
    });
    timing.period.forEach((period) => {
      expect(period).toBeCloseTo(0.6, 9);
    });
    play().strokes.forEach((stroke, i) => {
      expect(timing.deviation[i]).toBeCloseTo(habit(stroke.slot), 9);
    });
  });
  it('does so although strokes are missing and hands are open from there on', () => {
    const take = play({
      change: (a: { matches: { slot: number }[]; missed: number[] }) => ({
        ...a,
        matches: a.matches.filter((m) => m.slot !== 60 && m.slot !== 100),
        missed: [60, 100],
      }),
    });
    expect(take.strokes.filter((s) => s.hand === null).length).toBeGreaterThan(80);
    for (const r of take.timing!.residual) expect(r).toBeCloseTo(0, 9);
  });
  it('sets a stroke far off aside and measures it against the others', () => {
    const off = (slot: { index: number; partial: number; hand: string }) =>
      habit(slot) + (slot.index === 50 ? 0.04 : 0);
    const timing = play({ habit: off, player: { ...machine, motor: 0.002 } }).timing!;
    expect(timing.strays).toContain(50);
    expect(timing.judged[50]).toBe(0);
    expect(timing.residual[50]).toBeGreaterThan(0.035);
  });
  it('follows the tempo where it changes', () => {
    const { timing } = play({ slowing: 0.1 });
    expect(timing!.period[0]!).toBeLessThan(0.6 * 0.96);
    expect(timing!.period.at(-1)!).toBeGreaterThan(0.6 * 1.04);
  });
  it('needs 24 strokes', () => {
    expect(play({}, 'tempo: 100\n>RLR >LRL; x3').timing).toBeNull();
    expect(play({}, 'tempo: 100\n>RLR >LRL; x4').timing).not.toBeNull();
  });
  it('brings residuals to the scatter of the strokes themselves', () => {
    let squares = 0;
    let count = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const timing = play({ seed, player: players['independent jitter']! }).timing!;
      timing.scaledResidual.forEach((r, i) => {
        squares += timing.judged[i]! * r * r;
        count += timing.judged[i]!;
      });
    }
    expect(Math.sqrt(squares / count)).toBeGreaterThan(0.0077);
    expect(Math.sqrt(squares / count)).toBeLessThan(0.0082);
  });
});

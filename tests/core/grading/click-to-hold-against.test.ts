import { describe, expect, it } from 'vitest';
import { perfectPlayer } from '../../../fixtures/generator/player.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { plainTake } from '../../../fixtures/generator/take-spec.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { clickToHoldAgainst, type PlayedClick } from '../../../src/core/grading/click-to-hold-against.ts';
import { floatSource } from '../../support/float-source.ts';

const heard = { times: [1, 1.5, 2, 2.5], period: 0.5, levelDb: -20 };
const played = (later: number, change: Partial<PlayedClick> = {}): PlayedClick => ({
  times: [0.5, 1, 1.5, 2, 2.5, 3].map((time) => time + later),
  calibrated: true,
  uncertaintyMs: 1,
  ...change,
});

describe('clickToHoldAgainst', () => {
  it('takes a played click with a measured delay, and a heard one without', () => {
    expect(clickToHoldAgainst(heard, undefined)).toEqual({ click: heard, warnings: [] });
    expect(clickToHoldAgainst(heard, played(0.002)).click).toMatchObject({ played: { delaySe: 0.001 } });
    expect(clickToHoldAgainst(heard, played(0.002, { calibrated: false }))).toEqual({
      click: heard,
      warnings: [],
    });
    expect(clickToHoldAgainst(null, played(0, { calibrated: false }))).toEqual({
      click: null,
      warnings: [{ code: 'click-delay-unknown', facts: {} }],
    });
  });

  it('goes by what was heard where the delay has changed', () => {
    const { click, warnings } = clickToHoldAgainst(heard, played(-0.02));
    expect(click).toBe(heard);
    expect(warnings[0]!.code).toBe('click-delay-changed');
    expect(warnings[0]!.facts.differenceMs).toBeCloseTo(20, 6);
    expect(clickToHoldAgainst(heard, played(-0.02, { uncertaintyMs: 8 })).click).not.toBe(heard);
  });
});

describe('a take to a click that only the player hears', () => {
  // The tempo changes from line to line, and the click with it.
  const parsed = parseSheet('tempo: 100\n>RLR >LRL ; times: 6\ntempo: 116\nR>LR L>RL ; times: 6');
  if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
  const { sheet } = parsed;
  const slots = layOut(sheet);
  const take = renderTake({ ...plainTake, slots, bpm: 100, seed: 3, player: perfectPlayer });
  const start = take.truth.strokes[0]!.time;
  const beats = slots.filter(({ partial }) => partial === 1).map(({ time }) => start + time!);
  const countIn = [4, 3, 2, 1].map((n) => start - (n * 60) / 100);
  const graded = (delay: number, change: Partial<PlayedClick> = {}) =>
    gradeTake(floatSource(take.sampleRate, take.samples), sheet, {
      playedClick: {
        times: [...countIn, ...beats].map((time) => time + delay),
        calibrated: true,
        uncertaintyMs: 0,
        ...change,
      },
    });
  const offsetOf = (result: ReturnType<typeof graded>) =>
    result.measures.find(({ id, scope }) => id === 'offset' && Object.keys(scope).length === 0)!.outcome;

  it.each([0, 0.02, -0.015])('is told ahead or behind by the delay: %s s', (delay) => {
    const result = graded(delay);
    const outcome = offsetOf(result);
    expect(result.reference.kind).toBe('played-click');
    expect(outcome.state === 'measured' ? outcome.value : Number.NaN).toBeCloseTo(-1000 * delay, 0);
  });

  it('has an interval as wide as the delay is uncertain', () => {
    const outcome = offsetOf(graded(0, { uncertaintyMs: 3 }));
    if (outcome.state !== 'measured') throw new Error(outcome.reason.code);
    expect(outcome.high - outcome.value).toBeGreaterThan(1.95 * 3);
    expect(outcome.high - outcome.value).toBeLessThan(1.97 * 3 + 1);
  });

  it('has no offset without a measured delay', () => {
    const result = graded(0, { calibrated: false });
    expect(result.reference.kind).toBe('asked-tempo');
    expect(offsetOf(result)).toEqual({
      state: 'not-applicable',
      reason: { code: 'needs-a-click', facts: {} },
    });
    expect(result.warnings.map(({ code }) => code)).toContain('click-delay-unknown');
  });
});

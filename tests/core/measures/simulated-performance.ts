import type { Alignment, ReferenceKind } from '../../../src/core/alignment/alignment.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import type { Slot } from '../../../src/core/exercise/slot.ts';
import { type Performance, performanceOf } from '../../../src/core/measures/performance.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';

/** A player: how deviations arise, s. `correction` 0 and `selfPaced`: keeps time alone (Wing & Kristofferson 1973). */
export interface Player {
  readonly clock: number;
  readonly motor: number;
  readonly correction: number;
  readonly selfPaced: boolean;
}

/** Five players: independent jitter on a click, three strengths of phase correction, and one without a click. */
export const players: Readonly<Record<string, Player>> = {
  'independent jitter': { clock: 0, motor: 0.008, correction: 1, selfPaced: false },
  'slow corrector': { clock: 0.005, motor: 0.004, correction: 0.1, selfPaced: false },
  'middling corrector': { clock: 0.005, motor: 0.004, correction: 0.3, selfPaced: false },
  'quick corrector': { clock: 0.005, motor: 0.004, correction: 0.6, selfPaced: false },
  'no click': { clock: 0.004, motor: 0.004, correction: 0, selfPaced: true },
};

/** Plays what is asked without any scatter. */
export const machine: Player = { clock: 0, motor: 0, correction: 1, selfPaced: false };

export interface Take {
  readonly sheet: string;
  readonly seed: number;
  readonly player: Player;
  /** Seconds late by habit. */
  readonly habit?: (slot: Slot) => number;
  /** Level wanted, dB, and its scatter within a kind of stroke. */
  readonly level?: (slot: Slot) => number;
  readonly levelSd?: (slot: Slot) => number;
  /** Part of the levels' variance that fades slowly (memory 0.8 a stroke) rather than falling afresh. */
  readonly levelMemory?: number;
  /** Factor of the played period against the asked one, and its relative change from start to end. */
  readonly slower?: number;
  readonly slowing?: number;
  readonly missedShare?: number;
  /** Share of strokes that land 40 ms off. */
  readonly strayShare?: number;
  readonly timeSe?: number;
  readonly levelSe?: number;
  readonly reference?: ReferenceKind;
  /** Last word on the alignment. */
  readonly change?: (alignment: Alignment) => Alignment;
}

/** Numbers evenly spread over 0 … 1 from a seed (a 32-bit mixing generator in the public domain). */
export function uniformFrom(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers by Box and Muller's method. */
export function normalFrom(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Asynchronies to an even pulse, s, one a stroke. */
export function asynchronies(player: Player, count: number, normal: () => number): Float64Array {
  const { clock, motor, correction, selfPaced } = player;
  const warmUp = selfPaced ? 0 : 60;
  const out = new Float64Array(count);
  let at = 0;
  let motorBefore = motor * normal();
  for (let k = -warmUp; k < count; k++) {
    const motorNow = motor * normal();
    at = selfPaced
      ? at + clock * normal() + motorNow - motorBefore
      : (1 - correction) * at + clock * normal() + motorNow - motorBefore * (correction === 1 ? 0 : 1);
    motorBefore = motorNow;
    if (k >= 0) out[k] = at;
  }
  return out;
}

/** Grace notes come this much before their main stroke, s. */
const graceLead = 0.03;

/** A take played by a model of a player, heard with known errors and aligned without fault. */
export function simulatedPerformance(take: Take): Performance {
  const parsed = parseSheet(take.sheet);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const { sheet } = parsed;
  const slots = layOut(sheet);
  const uniform = uniformFrom(take.seed);
  const normal = normalFrom(uniform);
  const deviations = asynchronies(take.player, slots.length, normal);
  const { slower = 1, slowing = 0, timeSe = 0.00005, levelSe = 0.05, levelMemory = 0 } = take;
  const total = slots.at(-1)!.time! || 1;
  let slow = normal();
  const strokes: Stroke[] = [];
  const matches: { slot: number; stroke: number; segment: number }[] = [];
  const missed: number[] = [];
  slots.forEach((slot, i) => {
    slow = 0.8 * slow + 0.6 * normal();
    const fresh = normal();
    const levelDeviation = Math.sqrt(levelMemory) * slow + Math.sqrt(1 - levelMemory) * fresh;
    const isMissed = uniform() < (take.missedShare ?? 0) && i > 0 && i < slots.length - 1;
    const isStray = uniform() < (take.strayShare ?? 0);
    const side = uniform() < 0.5 ? -1 : 1;
    const errors = [normal(), normal()] as const;
    if (isMissed) {
      missed.push(slot.index);
      return;
    }
    const u = slot.time! / total;
    const time =
      2 -
      (slot.grace ? graceLead : 0) +
      slower * (slot.time! + slowing * total * (u * u - u) * 0.5) +
      deviations[i]! +
      (take.habit?.(slot) ?? 0) +
      (isStray ? 0.04 * side : 0) +
      timeSe * errors[0];
    const wanted = take.level?.(slot) ?? (slot.accent ? -18 : -30);
    const sd = take.levelSd?.(slot) ?? 1.5;
    matches.push({ slot: slot.index, stroke: strokes.length, segment: 0 });
    strokes.push({
      time,
      timeSe,
      levelDb: wanted + sd * levelDeviation + levelSe * errors[1],
      levelSe,
      sound: 'pad',
      evidence: 50,
      timbre: null,
    });
  });
  const alignment: Alignment = {
    reference: take.reference ?? (take.player.selfPaced ? 'asked-tempo' : 'heard-click'),
    segments: [
      {
        firstSlot: 0,
        lastSlot: slots.length - 1,
        state: 'graded',
        leadSwapped: false,
        origin: 2,
        period: 60 / sheet.lines[0]!.bpm!,
      },
    ],
    matches,
    missed,
    extra: [],
    doubled: [],
    outside: [],
    doubt: null,
  };
  const period = 60 / sheet.lines[0]!.bpm!;
  const times = Array.from({ length: Math.ceil(total / period) + 4 }, (_, k) => 2 + (k - 2) * period);
  return performanceOf({
    sheet,
    slots,
    strokes,
    alignment: take.change?.(alignment) ?? alignment,
    click: alignment.reference === 'heard-click' ? { times, period, levelDb: -20 } : null,
  });
}

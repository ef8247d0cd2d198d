import type { LevelEvidence } from './level-evidence.ts';
import type { MainSlots } from './main-slots.ts';
import { bounceReach, graceAtLeast, graceWithin, offPrice, prices } from './prices.ts';
import type { Run } from './runs.ts';

/** Neighbours on each side that the local tempo is fitted to. */
const neighbours = 7;

/**
 * Due time (s) and local seconds per beat at a beat, from the strokes matched around it without its own: a robust locally
 * weighted line (Cleveland 1979 for the family, quoted from memory).
 */
const localDue = (
  beats: readonly number[],
  times: readonly number[],
  at: number,
  beat: number,
): { due: number; period: number } | null => {
  const from = Math.max(0, at - neighbours);
  const to = Math.min(beats.length - 1, at + neighbours);
  const reach = Math.max(Math.abs(beats[from]! - beat), Math.abs(beats[to]! - beat)) * 1.15 + 1e-6;
  const weights = new Float64Array(to - from + 1);
  let due = 0;
  let period = 0;
  let spread = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 3; round++) {
    let sw = 0;
    let sb = 0;
    let st = 0;
    let sbb = 0;
    let sbt = 0;
    let size = 0;
    for (let i = from; i <= to; i++) {
      const b = beats[i]! - beat;
      if (Math.abs(b) < 1e-9) continue;
      const share = Math.abs(b) / reach;
      const rest = 1 - share * share * share;
      const tricube = rest * rest * rest;
      const r = round === 0 ? 0 : Math.abs(times[i]! - due - period * b) / (4 * spread);
      const w = tricube * (r < 1 ? (1 - r * r) ** 2 : 0);
      weights[i - from] = w;
      sw += w;
      sb += w * b;
      st += w * times[i]!;
      sbb += w * b * b;
      sbt += w * b * times[i]!;
      size += w > 0 ? 1 : 0;
    }
    const determinant = sw * sbb - sb * sb;
    if (size < 2 || determinant <= 1e-12) return round === 0 ? null : { due, period };
    period = (sw * sbt - sb * st) / determinant;
    due = (st - period * sb) / sw;
    let absolute = 0;
    for (let i = from; i <= to; i++) {
      absolute += weights[i - from]! * Math.abs(times[i]! - due - period * (beats[i]! - beat));
    }
    spread = Math.max((1.25 * absolute) / sw, 0.01 * Math.abs(period));
  }
  return { due, period };
};

interface RunQuestion {
  readonly run: Run;
  readonly main: MainSlots;
  readonly times: Float64Array;
  readonly levels: LevelEvidence;
  readonly scatter: number;
  /** Strokes open to this run: from one index up to, not including, another. */
  readonly from: number;
  readonly to: number;
}

/** Price of taking a stroke for a slot: early or late, its level, and what the other strokes near it become. */
const priceOf = (
  question: RunQuestion,
  slot: number,
  stroke: number,
  near: readonly number[],
  due: number,
  period: number,
): number => {
  const { main, times, levels, scatter } = question;
  const scale = scatter * main.space[slot]! * period;
  let price = offPrice((times[stroke]! - due) / scale);
  price -= main.accent[slot] === 1 ? levels.asAccent[stroke]! : levels.asTap[stroke]!;
  let graces = main.graces[slot]!;
  const within = bounceReach(main.room[slot]! * period);
  for (let n = near.length - 1; n >= 0; n--) {
    const other = near[n]!;
    const after = times[other]! - times[stroke]!;
    if (after > 0) {
      price -= after < within ? prices.bounce + Math.log((main.room[slot]! * period) / within) : prices.extra;
    } else if (after < 0 && graces > 0 && after <= -graceAtLeast && after >= -graceWithin) {
      graces--;
      price -= prices.gracePlayed;
    } else if (after < 0) price -= prices.extra;
  }
  price -= graces * prices.graceMissed;
  return price;
};

/**
 * The strokes of one run on its main slots: for each slot the best of the strokes no further from its due time
 * than half the space it has, where the due time comes from a straight line through the strokes matched around
 * it. Windows don't overlap, so the order is kept. Returns a stroke (or −1) for each slot from first to last.
 */
export const settleRun = (question: RunQuestion): Int32Array => {
  const { run, main, times, from, to } = question;
  let chosen = new Int32Array(run.last - run.first + 1).fill(-1);
  for (const step of run.steps) chosen[step.main - run.first] = step.stroke;
  for (let round = 0; round < 2; round++) {
    const beats: number[] = [];
    const matched: number[] = [];
    const placeBefore = new Int32Array(chosen.length);
    chosen.forEach((stroke, i) => {
      placeBefore[i] = beats.length;
      if (stroke < 0) return;
      beats.push(main.beat[run.first + i]!);
      matched.push(times[stroke]!);
    });
    const next = new Int32Array(chosen.length).fill(-1);
    let free = from;
    for (let i = 0; i < chosen.length; i++) {
      const slot = run.first + i;
      const local = localDue(beats, matched, placeBefore[i]!, main.beat[slot]!);
      if (local === null || local.period <= 0) {
        next[i] = chosen[i]!;
        continue;
      }
      const half = 0.5 * main.room[slot]! * local.period;
      while (free < to && times[free]! < local.due - half) free++;
      const near: number[] = [];
      for (let j = free; j < to && times[j]! <= local.due + half; j++) near.push(j);
      let best = Number.POSITIVE_INFINITY;
      for (const stroke of near) {
        const price = priceOf(question, slot, stroke, near, local.due, local.period);
        if (price < best) {
          best = price;
          next[i] = stroke;
        }
      }
      if (next[i]! >= 0) free = next[i]! + 1;
    }
    chosen = next;
  }
  return chosen;
};

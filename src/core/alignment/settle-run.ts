import type { LevelEvidence } from './level-evidence.ts';
import type { MainSlots } from './main-slots.ts';
import { bounceReach, graceAtLeast, graceWithin, offPrice, prices, type StrayPrices } from './prices.ts';
import type { Run } from './runs.ts';

/** Neighbours on each side that the local tempo is fitted to. Measured on simulated takes: 4 to 14 settle alike. */
const neighbours = 7;
/** How far past the farthest neighbour weights fall to nought. Measured: up to twice as far settles alike. */
const weighsOver = 1.15;

/**
 * Due time (s) and local seconds per beat at a beat, from the strokes matched around it without its own: a locally
 * weighted line (Cleveland 1979 for the family, quoted from memory). Without weights against strays: the path has passed
 * those by.
 */
const localDue = (
  beats: readonly number[],
  times: readonly number[],
  at: number,
  beat: number,
): { due: number; period: number } | null => {
  const from = Math.max(0, at - neighbours);
  const to = Math.min(beats.length - 1, at + neighbours);
  const farthest = Math.max(Math.abs(beats[from]! - beat), Math.abs(beats[to]! - beat));
  const reach = weighsOver * farthest + 1e-6;
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
    const w = rest * rest * rest;
    sw += w;
    sb += w * b;
    st += w * times[i]!;
    sbb += w * b * b;
    sbt += w * b * times[i]!;
    size += w > 0 ? 1 : 0;
  }
  const determinant = sw * sbb - sb * sb;
  if (size < 2 || determinant <= 1e-12) return null;
  const period = (sw * sbt - sb * st) / determinant;
  return { due: (st - period * sb) / sw, period };
};

interface RunQuestion {
  readonly run: Run;
  readonly main: MainSlots;
  readonly times: Float64Array;
  readonly levels: LevelEvidence;
  readonly scatter: number;
  readonly stray: StrayPrices;
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
  const { main, times, levels, scatter, stray } = question;
  const scale = scatter * main.space[slot]! * period;
  let price = offPrice((times[stroke]! - due) / scale);
  price -= main.accent[slot] === 1 ? levels.asAccent[stroke]! : levels.asTap[stroke]!;
  let graces = main.graces[slot]!;
  const within = bounceReach(main.room[slot]! * period);
  for (let n = near.length - 1; n >= 0; n--) {
    const other = near[n]!;
    const after = times[other]! - times[stroke]!;
    if (after > 0) {
      price -= after < within ? stray.bounce + Math.log((main.room[slot]! * period) / within) : stray.extra;
    } else if (after < 0 && graces > 0 && after <= -graceAtLeast && after >= -graceWithin) {
      graces--;
      price -= prices.gracePlayed;
    } else if (after < 0) price -= stray.extra;
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
  const onPath = new Int32Array(run.last - run.first + 1).fill(-1);
  for (const step of run.steps) onPath[step.main - run.first] = step.stroke;
  const beats = run.steps.map((step) => main.beat[step.main]!);
  const matched = run.steps.map((step) => times[step.stroke]!);
  const chosen = new Int32Array(onPath.length).fill(-1);
  let free = from;
  let placeBefore = 0;
  for (let i = 0; i < chosen.length; i++) {
    const slot = run.first + i;
    const local = localDue(beats, matched, placeBefore, main.beat[slot]!);
    if (onPath[i]! >= 0) placeBefore++;
    if (local === null || local.period <= 0) {
      chosen[i] = onPath[i]!;
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
        chosen[i] = stroke;
      }
    }
    if (chosen[i]! >= 0) free = chosen[i]! + 1;
  }
  return chosen;
};

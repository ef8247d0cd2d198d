import type { LevelEvidence } from './level-evidence.ts';
import { lookAheadTempo } from './look-ahead.ts';
import type { MainSlots } from './main-slots.ts';
import { openPaths, type StepKind } from './paths.ts';
import { bounceWithin, graceAtLeast, graceWithin, pauseSpacings, pauseSpread, prices } from './prices.ts';
import type { ThinStrokes } from './thin-strokes.ts';

/** One stroke laid on one main slot, and how the path came there. */
export interface PathStep {
  readonly stroke: number;
  /** Index into the main slots. */
  readonly main: number;
  readonly kind: StepKind;
}

export interface PathQuestion {
  /** Onsets (s) and levels of the strokes, in order of time. */
  readonly times: Float64Array;
  readonly thin: ThinStrokes;
  readonly levels: LevelEvidence;
  readonly main: MainSlots;
  /** Expected scatter of a stroke round the local tempo, as a share of the space it has. */
  readonly scatter: number;
  /** Seconds per beat found earlier for each line, or null. */
  readonly found: readonly (number | null)[];
  /** Price of a run's beginning at a slot by the phase of a click, nats; absent without one. */
  readonly phasePrice?: ((stroke: number, main: number, period: number) => number) | undefined;
}

/** Paths this far below the best one (nats) are given up. */
const beam = 20;
/** Slots that may be missed in a row, and strokes that may lie between two matched ones. */
const mostMissed = 5;
const reach = 24;
/** Gains of the beat tracker once it has settled: share of a deviation taken into phase and tempo. */
const phaseGain = 0.4;
const tempoGain = 0.08;
/** Uncertainty of a due time per second waited for it: the tempo may have moved. */
const tempoUnrest = 0.02;
const studentFour = Math.log(0.375);

/**
 * Lays strokes on slots: the likeliest walk through the sheet that stays in time with the strokes and agrees
 * with their levels, where every missed, extra and doubled stroke, slip, stop, jump and restart has its price.
 * A Viterbi search (Viterbi 1967) over (stroke, slot) in which each surviving path carries its own tempo
 * (per-survivor processing, Raheli, Polydoros & Tzou 1995), cut to a beam.
 */
export const findPath = (question: PathQuestion): PathStep[] => {
  const { times, thin, levels, main, scatter, found, phasePrice } = question;
  const strokes = times.length;
  if (strokes === 0 || main.length === 0) return [];
  const spacing = thin.spacing;
  const slipsTell = levels.asAccent.some((value) => value !== 0);
  const paths = openPaths(strokes, main.length, reach + 1);
  const noBar = main.bars.length;
  /** Best score of a path that lies outside every run, by the bar it left; the node it left. */
  const outScore = new Float64Array(noBar + 1).fill(Number.NEGATIVE_INFINITY);
  const outNode = new Int32Array(noBar + 1).fill(-1);
  outScore[noBar] = 0;

  const lineBegin = (line: number): number => main.bars[main.lineBar[line]!]!.beginBeat;
  const periodIn = (line: number, from: number, period: number): number => {
    const before = main.asked[from];
    const after = main.asked[line];
    return line === from || !before || !after ? period : (period * after) / before;
  };
  /** Seconds from slot to slot as written, at this tempo. */
  const span = (from: number, to: number, period: number): number => {
    const a = main.line[from]!;
    const b = main.line[to]!;
    if (a === b) return (main.beat[to]! - main.beat[from]!) * period;
    const begin = lineBegin(b);
    return (begin - main.beat[from]!) * period + (main.beat[to]! - begin) * periodIn(b, a, period);
  };

  const timing = (deviation: number, scale: number): number =>
    studentFour - 2.5 * Math.log1p((deviation / scale) ** 2 / 4) + Math.log(spacing / scale);
  const level = (stroke: number, slot: number): number =>
    main.accent[slot] === 1 ? levels.asAccent[stroke]! : levels.asTap[stroke]!;

  /** Price of the strokes between two matched ones: bounces of the first, grace notes of the second, extras. */
  const between = (from: number, to: number, fromSlot: number, slot: number, period: number): number => {
    let price = 0;
    let last = to - 1;
    let graces = main.graces[slot]!;
    for (; last > from && graces > 0; last--, graces--) {
      const ahead = times[to]! - times[last]!;
      if (ahead < graceAtLeast || ahead > graceWithin) break;
      price += prices.gracePlayed;
    }
    price += graces * prices.graceMissed;
    const bounceReach = Math.min(bounceWithin, 0.6 * main.room[fromSlot]! * period);
    for (let i = from + 1; i <= last; i++) {
      price +=
        times[i]! - times[from]! < bounceReach
          ? prices.bounce + Math.log(spacing / bounceReach)
          : prices.extra;
    }
    return price;
  };

  /** Tries every stroke near the due time of a slot. */
  const aim = (
    node: number,
    slot: number,
    due: number,
    waited: number,
    period: number,
    price: number,
    kind: StepKind,
    free = 0,
  ): void => {
    const from = paths.stroke[node]!;
    const half = 0.5 * main.room[slot]! * period;
    for (let j = from + 1; j < strokes && j <= from + reach && times[j]! <= due + half; j++) {
      if (times[j]! < due - half) continue;
      const deviation = times[j]! - due;
      const strokeScale = scatter * main.space[slot]! * period;
      const tempoScale = tempoUnrest * waited;
      const scale = Math.hypot(strokeScale, tempoScale);
      const inserted = Math.min(free, j - from - 1) * -prices.extra;
      const score =
        paths.score[node]! +
        price +
        inserted +
        between(from, j, paths.slot[node]!, slot, period) +
        timing(deviation, scale) +
        level(j, slot);
      const settled = paths.settled[node]!;
      const growing = (settled + 1) * (settled + 2);
      const phase = Math.max(phaseGain, (2 * (2 * settled + 1)) / growing, (tempoScale / scale) ** 2);
      const tempo = Math.max(tempoGain, 6 / growing);
      const bounded = Math.max(-3 * scale, Math.min(3 * scale, deviation));
      const step = Math.max(main.room[slot]!, waited / period);
      paths.offer(j, slot, score, node, kind, {
        due: due + phase * bounded,
        period: period + (tempo * bounded) / step,
        settled: Math.min(settled + 1, 40),
      });
    }
  };

  const tempoAhead = new Map<number, number | null>();
  const tempoFrom = (stroke: number, slot: number): number | null => {
    if (thin.place[stroke]! < 0) return null;
    const key = stroke * (main.length + 1) + main.signature[slot]!;
    const known = tempoAhead.get(key);
    if (known !== undefined) return known;
    const line = main.line[slot]!;
    const guesses = [found[line], main.asked[line]].filter((guess) => guess !== null && guess !== undefined);
    const tempo = lookAheadTempo(times, thin, stroke, main, slot, guesses);
    tempoAhead.set(key, tempo);
    return tempo;
  };

  /** Price of a tempo: against the one of the path so far, else the one found or asked. */
  const tempoPrice = (period: number, slot: number, node: number): number => {
    const line = main.line[slot]!;
    let price = 0;
    if (node >= 0) {
      const carried = periodIn(line, main.line[paths.slot[node]!]!, paths.period[node]!);
      price -= Math.min(4, 0.5 * (Math.log(period / carried) / 0.06) ** 2);
    }
    const likely = found[line] ?? main.asked[line];
    if (likely) price -= Math.min(3, 0.5 * (Math.log(period / likely) / 0.15) ** 2);
    return price;
  };

  const begin = (stroke: number, slot: number, score: number, node: number, kind: StepKind): void => {
    if (score < paths.bestAt(stroke) - beam) return;
    const period = tempoFrom(stroke, slot);
    if (period === null || period <= 0) return;
    const phase = phasePrice?.(stroke, slot, period) ?? 0;
    const total = score + tempoPrice(period, slot, node) + phase + level(stroke, slot);
    paths.offer(stroke, slot, total, node, kind, { due: times[stroke]!, period, settled: 3 });
  };

  const pauseBefore = (stroke: number): boolean =>
    stroke === 0 || times[stroke]! - times[stroke - 1]! > pauseSpacings * spacing;

  const beginAtBar = (stroke: number, bar: number, score: number, node: number, late: number): void => {
    const { first, line } = main.bars[bar]!;
    const abrupt = prices.outside + (pauseBefore(stroke) ? 0 : prices.noPause);
    for (let k = 0; k <= late; k++) {
      if (main.line[first + k] !== line) return;
      const missed = k === 0 ? 0 : prices.missed + (k - 1) * prices.missedAgain;
      begin(stroke, first + k, score + missed + abrupt, node, 'begin');
    }
  };

  /** Begins runs at a stroke, from every place outside. */
  const beginRuns = (stroke: number): void => {
    let best = noBar;
    for (let bar = 0; bar <= noBar; bar++) if (outScore[bar]! > outScore[best]!) best = bar;
    const floor = Math.max(outScore[best]!, paths.bestAt(stroke)) - beam;
    const nothing = outScore[noBar]!;
    if (nothing > floor) {
      main.bars.forEach((target, bar) => {
        const price =
          bar === 0 ? prices.beginAtSheet : target.startsLine ? prices.beginAtLine : prices.beginAtBar;
        beginAtBar(stroke, bar, nothing + price, -1, bar === 0 ? 2 : 0);
      });
    }
    for (let bar = 0; bar < noBar; bar++) {
      const score = outScore[bar]!;
      if (score < floor) continue;
      const node = outNode[bar]!;
      const line = main.bars[bar]!.line;
      if (bar + 1 < noBar) beginAtBar(stroke, bar + 1, score + prices.resumeNextBar, node, 1);
      beginAtBar(stroke, bar, score + prices.againFromBar, node, 0);
      let repeat = bar;
      while (!main.bars[repeat]!.startsRepeat) repeat--;
      if (pauseBefore(stroke)) {
        const price = prices.againFromEarlierBar - Math.log(Math.max(1, bar - main.lineBar[line]!));
        for (let earlier = main.lineBar[line]!; earlier < bar; earlier++) {
          beginAtBar(stroke, earlier, score + price, node, 0);
        }
      }
      if (repeat !== bar) beginAtBar(stroke, repeat, score + prices.againFromRepeat, node, 0);
      beginAtBar(stroke, main.lineBar[line]!, score + prices.againFromLine, node, 1);
      beginAtBar(stroke, 0, score + prices.againFromSheet, node, 1);
      const next = main.lineBar[line + 1];
      if (next !== undefined) beginAtBar(stroke, next, score + prices.resumeNextLine, node, 1);
    }
    if (best < noBar) {
      main.bars.forEach((target, bar) => {
        const price = target.startsLine ? prices.anyLine : prices.anyBar;
        beginAtBar(stroke, bar, outScore[best]! + price, outNode[best]!, 0);
      });
    }
  };

  const goOn = (node: number): void => {
    const slot = paths.slot[node]!;
    const stroke = paths.stroke[node]!;
    const period = paths.period[node]!;
    const due = paths.due[node]!;
    const line = main.line[slot]!;
    for (let k = 0; k <= mostMissed && slot + 1 + k < main.length; k++) {
      const to = slot + 1 + k;
      const missed = k === 0 ? 0 : prices.missed + (k - 1) * prices.missedAgain;
      const waited = span(slot, to, period);
      aim(node, to, due + waited, waited, periodIn(main.line[to]!, line, period), missed, 'next');
    }
    const next = slot + 1;
    const sameLine = next < main.length && main.line[next] === line;
    if (slipsTell) {
      for (let left = 1; left <= 2; left++) {
        const to = next + left;
        if (to >= main.length || main.line[to] !== line) break;
        const waited = (main.beat[to]! - main.beat[to - 1]!) * period;
        aim(node, to, due + waited, waited, period, left === 1 ? prices.slip : prices.slipTwo, 'slip');
      }
      if (sameLine) {
        const step = main.beat[next]! - main.beat[slot]!;
        for (let put = 1; put <= 2; put++) {
          const waited = step * (1 + put) * period;
          aim(
            node,
            next,
            due + waited,
            waited,
            period,
            put === 1 ? prices.slip : prices.slipTwo,
            'slip',
            put,
          );
        }
      }
    }
    if (next < main.length) {
      const pause = (sameLine ? prices.hesitation : prices.restNotKept) + Math.log(spacing / pauseSpread);
      for (let j = stroke + 1; j <= stroke + 3 && j < strokes; j++) {
        if (times[j]! - times[stroke]! < 0.5 * main.room[slot]! * period) continue;
        const score = paths.score[node]! + pause + (j - stroke - 1) * prices.outside;
        begin(j, next, score, node, 'pause');
      }
    }
    jump(node);
  };

  /** Goes on in time with another bar than the written one. */
  const jump = (node: number): void => {
    const slot = paths.slot[node]!;
    const here = main.bars[main.bar[slot]!]!;
    if (slot !== here.last) return;
    const line = here.line;
    const bar = main.bar[slot]!;
    const period = paths.period[node]!;
    const to = (target: number | undefined, price: number, kind: StepKind, rest = 0): void => {
      const there = target === undefined ? undefined : main.bars[target];
      if (!there) return;
      const first = there.first;
      const carried = periodIn(there.line, line, period);
      const waited =
        (here.endBeat + rest - main.beat[slot]!) * period + (main.beat[first]! - there.beginBeat) * carried;
      aim(node, first, paths.due[node]! + waited, waited, carried, price, kind);
    };
    const endsLine = main.bars[bar + 1]?.line !== line;
    if (endsLine) {
      const after = main.lineBar[line + 1];
      const rest = after === undefined ? 0 : lineBegin(line + 1) - here.endBeat;
      for (const waitedBeats of rest > 0 ? [0, rest] : [0]) {
        to(main.lastRepeatBar[line], prices.anotherRepeat, 'surplus', waitedBeats);
        to(main.lineBar[line + 2], prices.lineLeftOut, 'jump', waitedBeats);
      }
    } else {
      to(main.lineBar[line + 1], prices.countLost, 'jump');
      if (main.bars[bar + 2]?.line === line) to(bar + 2, prices.countLost, 'jump');
    }
    to(bar, prices.countLost, 'surplus');
  };

  const leave = (node: number): void => {
    const slot = paths.slot[node]!;
    const bar = main.bar[slot]!;
    const price =
      slot === main.length - 1
        ? prices.endOfSheet
        : main.line[slot + 1] !== main.line[slot]
          ? prices.endOfLine
          : main.bar[slot + 1] !== bar
            ? prices.endOfBar
            : prices.endAnywhere;
    const next = paths.stroke[node]! + 1;
    const abrupt = slot === main.length - 1 || next === strokes || pauseBefore(next) ? 0 : prices.noPause;
    const score = paths.score[node]! + price + abrupt;
    if (score > outScore[bar]!) {
      outScore[bar] = score;
      outNode[bar] = node;
    }
  };

  beginRuns(0);
  for (let j = 0; j < strokes; j++) {
    for (let bar = 0; bar <= noBar; bar++) outScore[bar]! += prices.outside;
    const nodes = paths.close(j, Math.max(...outScore) - beam, beam);
    for (const node of nodes) leave(node);
    for (const node of nodes) goOn(node);
    if (j + 1 < strokes) beginRuns(j + 1);
  }

  let best = noBar;
  for (let bar = 0; bar < noBar; bar++) {
    if (bar < noBar - 1 || paths.slot[outNode[bar]!] !== main.length - 1)
      outScore[bar]! += prices.stoppedEarly;
    if (outScore[bar]! > outScore[best]!) best = bar;
  }
  const steps: PathStep[] = [];
  for (let node = outNode[best]!; node >= 0; node = paths.before[node]!) {
    steps.push({ stroke: paths.stroke[node]!, main: paths.slot[node]!, kind: paths.kind(node) });
  }
  return steps.reverse();
};

import { aim } from './aim.ts';
import { begin } from './begin-runs.ts';
import type { StepKind } from './paths.ts';
import { pauseSpread, prices } from './prices.ts';
import type { Search } from './search.ts';

/**
 * Slots that may be missed in a row, and strokes that may lie in a pause. Measured on 120 simulated takes: 2 to 10
 * of the first and 2 to 3 of the second align the same.
 */
const mostMissed = 5;
const mostInPause = 3;
/** Strokes that may be passed by to reach a later slot. Measured: 1 to 4 align 120 simulated takes the same. */
const mostPassedBy = 2;
/** Slips, pauses and jumps are tried from paths within so many nats of the best. Measured: none lost. */
const boldWithin = 7;

/** The next slot in time, or one after it with those between missed. */
const inTurn = (search: Search, node: number): void => {
  const { main, paths } = search;
  const slot = paths.slot[node]!;
  const period = paths.period[node]!;
  for (let k = 0; k <= mostMissed && slot + 1 + k < main.length; k++) {
    const to = slot + 1 + k;
    const waited = search.span(slot, to, period);
    const passedBy = search.times[paths.stroke[node]! + 1 + mostPassedBy];
    if (
      k > 0 &&
      passedBy !== undefined &&
      passedBy < paths.due[node]! + waited - 0.5 * main.room[to]! * period
    )
      return;
    const periodThere = search.periodIn(main.line[to]!, main.line[slot]!, period);
    const price = k === 0 ? 0 : prices.missed + (k - 1) * prices.missedAgain;
    aim(search, node, to, paths.due[node]! + waited, waited, periodThere, price, 'next');
  }
};

/** One or two partials left out and the gap closed, or put in, while the pulse goes on. */
const slip = (search: Search, node: number): void => {
  const { main, paths } = search;
  const slot = paths.slot[node]!;
  const period = paths.period[node]!;
  const due = paths.due[node]!;
  const next = slot + 1;
  for (let count = 1; count <= 2; count++) {
    const price = count === 1 ? prices.slip : prices.slipTwo;
    const to = next + count;
    if (to < main.length && main.line[to] === main.line[slot]) {
      const waited = (main.beat[to]! - main.beat[to - 1]!) * period;
      aim(search, node, to, due + waited, waited, period, price, 'slip');
    }
    if (next < main.length && main.line[next] === main.line[slot]) {
      const waited = (main.beat[next]! - main.beat[slot]!) * (1 + count) * period;
      aim(search, node, next, due + waited, waited, period, price, 'slip', count);
    }
  }
};

/** The next slot after a stop of any length: within a line a hesitation, between lines a rest not kept. */
const pause = (search: Search, node: number): void => {
  const { main, paths, times, strokes, spacing } = search;
  const slot = paths.slot[node]!;
  const stroke = paths.stroke[node]!;
  const next = slot + 1;
  if (next >= main.length) return;
  const stop = main.line[next] === main.line[slot] ? prices.hesitation : prices.restNotKept;
  const score = paths.score[node]! + stop + Math.log(spacing / pauseSpread);
  for (let j = stroke + 1; j <= stroke + mostInPause && j < strokes; j++) {
    if (times[j]! - times[stroke]! < 0.5 * main.room[slot]! * paths.period[node]!) continue;
    begin(search, j, next, score + (j - stroke - 1) * prices.outside, node, 'pause');
  }
};

/** The next slot with the next stroke, wherever that lies: the click is back, and the beat jumps to it. */
const catchUp = (search: Search, node: number): void => {
  const { main, paths, strokes } = search;
  const next = paths.slot[node]! + 1;
  const stroke = paths.stroke[node]! + 1;
  if (next >= main.length || stroke >= strokes || !search.clickIsBack?.(stroke)) return;
  begin(search, stroke, next, paths.score[node]! + prices.caughtUp, node, 'caught-up');
};

/** At the end of a bar, on in time with another bar than the written one. */
const jump = (search: Search, node: number): void => {
  const { main, paths } = search;
  const slot = paths.slot[node]!;
  const bar = main.bar[slot]!;
  const here = main.bars[bar]!;
  if (slot !== here.last) return;
  const { line } = here;
  const to = (target: number | undefined, price: number, kind: StepKind, rest = 0): void => {
    const there = target === undefined ? undefined : main.bars[target];
    if (!there) return;
    const period = search.periodIn(there.line, line, paths.period[node]!);
    const waited =
      (here.endBeat + rest - main.beat[slot]!) * paths.period[node]! +
      (main.beat[there.first]! - there.beginBeat) * period;
    aim(search, node, there.first, paths.due[node]! + waited, waited, period, price, kind);
  };
  if (main.bars[bar + 1]?.line === line) {
    to(main.lineBar[line + 1], prices.countLost, 'jump');
    if (main.bars[bar + 2]?.line === line) to(bar + 2, prices.countLost, 'jump');
  } else {
    const after = main.lineBar[line + 1];
    const rest = after === undefined ? 0 : main.bars[after]!.beginBeat - here.endBeat;
    for (const beats of rest > 0 ? [0, rest] : [0]) {
      to(main.lastRepeatBar[line], prices.anotherRepeat, 'surplus', beats);
      to(main.lineBar[line + 2], prices.lineLeftOut, 'jump', beats);
    }
  }
  to(bar, prices.countLost, 'surplus');
};

/** Every way on from a node but leaving the run. Slips are tried only where levels can show them. */
export const goOn = (search: Search, node: number, slipsTell: boolean): void => {
  const { paths } = search;
  inTurn(search, node);
  if (paths.score[node]! < paths.bestAt(paths.stroke[node]!) - boldWithin) return;
  if (slipsTell) slip(search, node);
  pause(search, node);
  catchUp(search, node);
  jump(search, node);
};

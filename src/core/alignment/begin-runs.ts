import type { MainSlots } from './main-slots.ts';
import type { Outside } from './outside.ts';
import type { StepKind } from './paths.ts';
import { offPrice, prices } from './prices.ts';
import { beam, type Search } from './search.ts';

/**
 * How far a tempo strays from the path's and from the one found or asked (SD of its logarithm), and what it costs at
 * most, nats. Measured on simulated takes: half to twice of each aligns 120 the same; without any price 3 of 840 more
 * go wrong.
 */
const strays = { carried: { spread: 0.06, most: 4 }, likely: { spread: 0.15, most: 3 } };

const strayPrice = (ratio: number, { spread, most }: { readonly spread: number; readonly most: number }) =>
  Math.min(most, 0.5 * (Math.log(ratio) / spread) ** 2);

/** Price of a tempo: against the one of the path so far, and against the one found or asked. */
const tempoPrice = (
  { main, paths, found, periodIn }: Search,
  period: number,
  slot: number,
  node: number,
): number => {
  const line = main.line[slot]!;
  let price = 0;
  if (node >= 0) {
    const carried = periodIn(line, main.line[paths.slot[node]!]!, paths.period[node]!);
    price -= strayPrice(period / carried, strays.carried);
  }
  const likely = found[line] ?? main.asked[line];
  if (likely) price -= strayPrice(period / likely, strays.likely);
  return price;
};

/**
 * Strokes that the pulse of a beginning is worth to the beat tracker. Measured: 2 aligns 120 simulated takes the same,
 * 6 a little worse.
 */
const settledAtBegin = 3;

/** Begins a run on a slot at a tempo of its own, where the strokes ahead fit. */
export const begin = (
  search: Search,
  stroke: number,
  slot: number,
  score: number,
  node: number,
  kind: StepKind,
): void => {
  const { paths } = search;
  if (score < paths.bestAt(stroke) - beam) return;
  const level = search.level(stroke, slot);
  // Tempo and timing can only lower the score from here.
  if (score + level + search.mostPhase <= paths.scoreAt(stroke, slot)) return;
  const pulse = search.pulseFrom(stroke, slot);
  if (pulse === null) return;
  const { due, period } = pulse;
  const phase = search.phasePrice?.(stroke, slot, period) ?? 0;
  const scale = search.scatter * search.main.space[slot]! * period;
  const total =
    score +
    tempoPrice(search, period, slot, node) +
    phase -
    offPrice((search.times[stroke]! - due) / scale) +
    level;
  paths.offer(stroke, slot, total, node, kind, due, period, settledAtBegin);
};

/** Begins a run at a bar, up to `late` of its first slots missed. */
const beginAtBar = (
  search: Search,
  stroke: number,
  bar: number,
  score: number,
  node: number,
  late: number,
): void => {
  const { first, line } = search.main.bars[bar]!;
  const abrupt = prices.outside + (search.pauseBefore(stroke) ? 0 : prices.noPause);
  for (let k = 0; k <= late && search.main.line[first + k] === line; k++) {
    const missed =
      k === 0 ? 0 : (bar === 0 ? prices.firstMissed : prices.missed) + (k - 1) * prices.missedAgain;
    begin(search, stroke, first + k, score + missed + abrupt, node, 'begin');
  }
};

/** Begins runs again after one was left in a bar: where a player would, by price. */
const beginAgain = (search: Search, stroke: number, bar: number, score: number, node: number): void => {
  const { main } = search;
  const { line } = main.bars[bar]!;
  const lineBar = main.lineBar[line]!;
  const at = (target: number, price: number, late: number): void =>
    beginAtBar(search, stroke, target, score + price, node, late);
  if (bar + 1 < main.bars.length) at(bar + 1, prices.resumeNextBar, 1);
  at(bar, prices.againFromBar, 0);
  at(lineBar, prices.againFromLine, 1);
  at(0, prices.againFromSheet, 1);
  const next = main.lineBar[line + 1];
  if (next !== undefined) at(next, prices.resumeNextLine, 1);
  let repeat = bar;
  while (!main.bars[repeat]!.startsRepeat) repeat--;
  if (repeat !== bar) at(repeat, prices.againFromRepeat, 0);
  if (search.pauseBefore(stroke)) {
    const price = prices.againFromEarlierBar - Math.log(Math.max(1, bar - lineBar));
    for (let earlier = lineBar; earlier < bar; earlier++) at(earlier, price, 0);
  }
};

/** Begins runs at a stroke from every place outside. */
export const beginRuns = (search: Search, outside: Outside, stroke: number): void => {
  const { bars, asked } = search.main;
  const perBar = Math.log(bars.length);
  const perLine = Math.log(asked.length);
  const best = outside.best();
  const floor = Math.max(outside.score(best), search.paths.bestAt(stroke)) - beam;
  const nothing = outside.score(outside.none);
  if (nothing > floor) {
    bars.forEach(({ startsLine }, bar) => {
      const price = startsLine ? prices.beginAtLine - perLine : prices.beginAtBar - perBar;
      beginAtBar(
        search,
        stroke,
        bar,
        nothing + (bar === 0 ? prices.beginAtSheet : price),
        -1,
        bar === 0 ? 2 : 0,
      );
    });
  }
  for (const bar of outside.open) {
    if (bar !== outside.none && outside.score(bar) >= floor)
      beginAgain(search, stroke, bar, outside.score(bar), outside.node(bar));
  }
  if (best !== outside.none && search.pauseBefore(stroke)) {
    bars.forEach(({ startsLine }, bar) => {
      const price = startsLine ? prices.anyLine - perLine : prices.anyBar - perBar;
      beginAtBar(search, stroke, bar, outside.score(best) + price, outside.node(best), 0);
    });
  }
};

/** Whether less than a beat of the sheet is left after a slot: the rest was missed, not left out. */
export const nearlyEnds = ({ length, line, beat }: MainSlots, slot: number): boolean =>
  line[slot] === line[length - 1] && beat[length - 1]! - beat[slot]! < 1;

/** Leaves the run at a node: the cheaper, the more of the sheet ends there. */
export const leaveRun = (search: Search, outside: Outside, node: number): void => {
  const { main, paths, strokes } = search;
  const slot = paths.slot[node]!;
  const bar = main.bar[slot]!;
  const next = paths.stroke[node]! + 1;
  const left = main.length - 1 - slot;
  const endsSheet = nearlyEnds(main, slot);
  const endsLine = main.line[slot + 1] !== main.line[slot];
  const endsBar = main.bar[slot + 1] !== bar;
  const missed = left === 0 ? 0 : prices.missed + (left - 1) * prices.missedAgain;
  const ending = endsLine ? prices.endOfLine : endsBar ? prices.endOfBar : prices.endAnywhere;
  const abrupt = endsSheet || next === strokes || search.pauseBefore(next) ? 0 : prices.noPause;
  const score = paths.score[node]! + (endsSheet ? prices.endOfSheet + missed : ending) + abrupt;
  outside.leave(bar, score, node);
};

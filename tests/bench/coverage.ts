/** Share of simulated takes whose interval holds the truth, by player, length and measure. `tsx tests/bench/coverage.ts 500` */
import { measures } from '../../src/core/measures/index.ts';
import type { Scope } from '../../src/core/result/take-result.ts';
import {
  asynchronies,
  normalFrom,
  players,
  simulatedPerformance,
  uniformFrom,
} from '../core/measures/simulated-performance.ts';

const runs = Number(process.argv[2] ?? 300);
const places = [0, -0.005, 0.004];
const meanPlace = (0 - 0.005 + 0.004) / 3;
const handApart = 0.004;
const habit = (slot: { partial: number; hand: string }) =>
  places[slot.partial - 1]! + (slot.hand === 'L' ? handApart / 2 : -handApart / 2);

/** Long-run value of the timing spread by plain windows of 13 strokes. */
function spreadOf(player: (typeof players)[string]): number {
  const a = asynchronies(player, 60_000, normalFrom(uniformFrom(99)));
  let squares = 0;
  let windows = 0;
  for (let i = 0; i + 13 <= a.length; i += 3) {
    const w = a.subarray(i, i + 13);
    const m = w.reduce((s, v) => s + v, 0) / 13;
    let xy = 0;
    let yy = 0;
    w.forEach((v, k) => {
      xy += (k - 6) * (v - m);
      yy += (v - m) ** 2;
    });
    squares += (yy - xy ** 2 / 182) / 11;
    windows++;
  }
  return Math.sqrt(squares / windows) * 1000;
}

const rows: [string, Scope, (player: string) => number][] = [
  ['timing-spread', {}, (p) => spreads[p]!],
  ['placement', { partial: 2 }, () => (places[1]! - meanPlace) * 1000],
  ['placement', { partial: 3 }, () => (places[2]! - meanPlace) * 1000],
  ['hand-offset', {}, () => handApart * 1000],
  ['tempo-error', {}, () => 0],
  ['tempo-change', {}, () => 0],
  ['accent-to-tap-ratio', {}, () => 12],
  ['accent-to-tap-ratio', { hand: 'R' }, () => 12],
  ['tap-spread', {}, () => 1.5],
  ['accent-spread', {}, () => 1.5],
];
const spreads = Object.fromEntries(Object.entries(players).map(([name, p]) => [name, spreadOf(p)]));
for (const faults of [0, 1]) {
  for (const repeats of [4, 12, 40]) {
    const hits = new Map<string, number>();
    const sums = new Map<string, number>();
    const started = performance.now();
    for (const [name, player] of Object.entries(players)) {
      for (let seed = 0; seed < runs; seed++) {
        const take = simulatedPerformance({
          sheet: `tempo: 111.111\n>RLR >LRL >RLR >LRL; x${repeats}`,
          seed: seed + 1,
          player,
          habit,
          levelMemory: 0.3,
          missedShare: faults * 0.01,
          strayShare: faults * 0.005,
        });
        const results = measures.flatMap((m) => m.compute(take));
        rows.forEach(([id, scope, truth], r) => {
          const o = results.find(
            (x) => x.id === id && JSON.stringify(x.scope) === JSON.stringify(scope),
          )?.outcome;
          const key = `${r}|${name}`;
          if (o?.state === 'measured') {
            const t = truth(name);
            if (o.low <= t && t <= o.high) hits.set(key, (hits.get(key) ?? 0) + 1);
            sums.set(key, (sums.get(key) ?? 0) + o.value);
            sums.set(`${key}|n`, (sums.get(`${key}|n`) ?? 0) + 1);
            sums.set(`${key}|w`, (sums.get(`${key}|w`) ?? 0) + (o.high - o.low) / 2);
          }
        });
      }
    }
    const ms = (performance.now() - started) / runs / 5;
    console.log(
      `\n${repeats * 12} strokes, ${faults ? '1 % missed, .5 % strays' : 'clean'}; ${ms.toFixed(1)} ms a take`,
    );
    rows.forEach(([id, scope, truth], r) => {
      const cells = Object.keys(players).map((name) => {
        const key = `${r}|${name}`;
        const n = sums.get(`${key}|n`) ?? 0;
        if (n === 0) return 'none'.padStart(24);
        const cover = (100 * (hits.get(key) ?? 0)) / n;
        return `${cover.toFixed(1).padStart(6)} (${(sums.get(key)! / n).toFixed(2)}/${truth(name).toFixed(2)} ±${(sums.get(`${key}|w`)! / n).toFixed(2)})${n < runs ? ` n${n}` : ''}`.padStart(
          24,
        );
      });
      console.log(`${id} ${JSON.stringify(scope)}`.padEnd(36), cells.join(' '));
    });
  }
}

import type { Paths } from './paths.ts';
import { prices } from './prices.ts';
import { beam } from './search.ts';

/** Paths that lie outside every run: the best one for each bar left, and one that was in none. */
export interface Outside {
  /** The bars left that may still be gone on from, ascending; `none`, after the last bar, stands for no run yet. */
  readonly open: readonly number[];
  readonly none: number;
  /** The bar left by the best path. */
  best(): number;
  /** By bar; −∞ where none is open. */
  score(bar: number): number;
  /** The node from which the run was left, or −1. */
  node(bar: number): number;
  /** Keeps a path that leaves its run at a node, if it is the best one for its bar. */
  leave(bar: number, score: number, node: number): void;
  /** A stroke lies outside; paths that can't become the best any more are given up, for all fall alike. */
  pass(): void;
}

/** Before the first stroke: no run yet. */
export const openOutside = (bars: number, paths: Pick<Paths, 'hold' | 'letGo'>): Outside => {
  const score = new Float64Array(bars + 1).fill(Number.NEGATIVE_INFINITY);
  const node = new Int32Array(bars + 1).fill(-1);
  const open = [bars];
  score[bars] = 0;
  const best = () => open.reduce((one, bar) => (score[bar]! > score[one]! ? bar : one));
  return {
    open,
    none: bars,
    best,
    score: (bar) => score[bar]!,
    node: (bar) => node[bar]!,
    leave(bar, value, from) {
      if (value <= score[bar]!) return;
      if (score[bar] === Number.NEGATIVE_INFINITY) {
        let at = open.length;
        while (at > 0 && open[at - 1]! > bar) at--;
        open.splice(at, 0, bar);
      }
      score[bar] = value;
      paths.hold(from);
      paths.letGo(node[bar]!);
      node[bar] = from;
    },
    pass() {
      const least = score[best()]! - beam;
      let kept = 0;
      for (const bar of open) {
        if (score[bar]! < least) {
          paths.letGo(node[bar]!);
          node[bar] = -1;
          score[bar] = Number.NEGATIVE_INFINITY;
        } else {
          score[bar]! += prices.outside;
          open[kept++] = bar;
        }
      }
      open.length = kept;
    },
  };
};

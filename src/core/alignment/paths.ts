/** How a path comes to a slot: in turn, after a slip or a pause, by a jump or an extra repeat, or from outside. */
export type StepKind = 'begin' | 'next' | 'slip' | 'pause' | 'jump' | 'surplus';

const kinds: readonly StepKind[] = ['begin', 'next', 'slip', 'pause', 'jump', 'surplus'];

/** The paths of a search, in columns: one entry a node, a node being a stroke on a slot with its best path. */
export interface Paths {
  readonly stroke: number[];
  readonly slot: number[];
  readonly score: number[];
  /** The node before, or −1. */
  readonly before: number[];
  /** Where the path stands in time: the beat's due time (s), seconds per beat, and strokes followed so far. */
  readonly due: number[];
  readonly period: number[];
  readonly settled: number[];
  kind(node: number): StepKind;
  /** Keeps a path to (stroke, slot) if it is the best one there. */
  offer(
    stroke: number,
    slot: number,
    score: number,
    before: number,
    kind: StepKind,
    due: number,
    period: number,
    settled: number,
  ): void;
  /** Best score offered so far at a stroke. */
  bestAt(stroke: number): number;
  /** Ends offers to a stroke: at most so many nodes not below `floor`, the best first. */
  close(stroke: number, floor: number, most: number): readonly number[];
}

/** An empty store for a number of strokes and slots; offers may reach `ahead` strokes beyond the last closed one. */
export const openPaths = (strokes: number, slots: number, ahead: number): Paths => {
  const stroke: number[] = [];
  const slot: number[] = [];
  const score: number[] = [];
  const before: number[] = [];
  const due: number[] = [];
  const period: number[] = [];
  const settled: number[] = [];
  const kind: number[] = [];
  const rows = ahead + 1;
  const nodeAt = new Int32Array(rows * slots).fill(-1);
  const openAt: number[][] = Array.from({ length: rows }, () => []);
  const best = new Float64Array(strokes).fill(Number.NEGATIVE_INFINITY);
  return {
    stroke,
    slot,
    score,
    before,
    due,
    period,
    settled,
    kind: (node) => kinds[kind[node]!]!,
    bestAt: (j) => best[j]!,
    offer: (j, s, value, from, how, nextDue, nextPeriod, followed) => {
      const row = j % rows;
      const cell = row * slots + s;
      const known = nodeAt[cell]!;
      if (known >= 0 && score[known]! >= value) return;
      if (value > best[j]!) best[j] = value;
      const node = known >= 0 ? known : score.length;
      if (known < 0) {
        nodeAt[cell] = node;
        openAt[row]!.push(node);
      }
      stroke[node] = j;
      slot[node] = s;
      score[node] = value;
      before[node] = from;
      due[node] = nextDue;
      period[node] = nextPeriod;
      settled[node] = followed;
      kind[node] = kinds.indexOf(how);
    },
    close: (j, floor, most) => {
      const open = openAt[j % rows]!;
      openAt[j % rows] = [];
      for (const node of open) nodeAt[(j % rows) * slots + slot[node]!] = -1;
      return open
        .filter((node) => score[node]! >= floor)
        .sort((a, b) => score[b]! - score[a]!)
        .slice(0, most);
    },
  };
};

/** How a path comes to a slot: in turn, after a slip or a pause, by a jump or an extra repeat, or from outside. */
export type StepKind = 'begin' | 'next' | 'slip' | 'pause' | 'jump' | 'surplus';

const kinds: readonly StepKind[] = ['begin', 'next', 'slip', 'pause', 'jump', 'surplus'];

/** Where a path stands in time: the beat's due time (s), seconds per beat, and strokes it has followed. */
export interface PathTempo {
  readonly due: number;
  readonly period: number;
  readonly settled: number;
}

/** Grows column by column: one entry a node, a node being one stroke on one slot with its best path so far. */
export interface Paths {
  readonly stroke: number[];
  readonly slot: number[];
  readonly score: number[];
  readonly before: number[];
  readonly due: number[];
  readonly period: number[];
  readonly settled: number[];
  kind(node: number): StepKind;
  /** Keeps a path to (stroke, slot) if it is the best one there. */
  offer(stroke: number, slot: number, score: number, before: number, kind: StepKind, tempo: PathTempo): void;
  /** Best score offered so far at a stroke. */
  bestAt(stroke: number): number;
  /** Ends offers to a stroke: its nodes not below `floor` nor more than `beam` below the best. */
  close(stroke: number, floor: number, beam: number): readonly number[];
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
    offer: (j, s, value, from, how, tempo) => {
      if (value > best[j]!) best[j] = value;
      const cell = (j % rows) * slots + s;
      let node = nodeAt[cell]!;
      if (node >= 0 && score[node]! >= value) return;
      if (node < 0) {
        node = score.length;
        nodeAt[cell] = node;
        openAt[j % rows]!.push(node);
        stroke[node] = j;
        slot[node] = s;
      }
      score[node] = value;
      before[node] = from;
      kind[node] = kinds.indexOf(how);
      due[node] = tempo.due;
      period[node] = tempo.period;
      settled[node] = tempo.settled;
    },
    close: (j, floor, beam) => {
      const open = openAt[j % rows]!;
      openAt[j % rows] = [];
      for (const node of open) nodeAt[(j % rows) * slots + slot[node]!] = -1;
      const least = Math.max(floor, best[j]! - beam);
      return open.filter((node) => score[node]! >= least);
    },
  };
};

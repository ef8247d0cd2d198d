const kinds = ['begin', 'next', 'slip', 'pause', 'jump', 'surplus', 'caught-up'] as const;

/**
 * How a path comes to a slot: from outside, in turn, after a slip or a pause, by a jump or an extra repeat, or by finding
 * back to a click that was silent.
 */
export type StepKind = (typeof kinds)[number];

/**
 * Paths followed as long as the beam allows; further ones only within so many nats of the best. Measured: none lost.
 */
const followed = { paths: 24, nats: 6 };

/**
 * The paths of a search, in columns: one entry a node, a node being a stroke on a slot with its best path. The columns
 * are replaced as they grow: read them anew after an offer.
 */
export interface Paths {
  readonly stroke: Int32Array;
  readonly slot: Int32Array;
  readonly score: Float64Array;
  /** The node before, or −1. */
  readonly before: Int32Array;
  /** Where the path stands in time: the beat's due time (s), seconds per beat, and strokes followed so far. */
  readonly due: Float64Array;
  readonly period: Float64Array;
  readonly settled: Int32Array;
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
  /** Score that an offer to (stroke, slot) must exceed. */
  scoreAt(stroke: number, slot: number): number;
  /**
   * Ends offers to a stroke: at most so many nodes not below `floor`, the best first, and of the later ones only what
   * comes near the best. The others are forgotten.
   */
  close(stroke: number, floor: number, most: number): readonly number[];
  /** Says that nodes handed out by `close` have been followed. A node is forgotten once no path leads on from it. */
  followed(nodes: readonly number[]): void;
  /** Keeps a node from being forgotten, until it is let go as often. −1 is none. */
  hold(node: number): void;
  letGo(node: number): void;
}

interface Columns {
  stroke: Int32Array;
  slot: Int32Array;
  score: Float64Array;
  before: Int32Array;
  due: Float64Array;
  period: Float64Array;
  settled: Int32Array;
  how: Uint8Array;
  /** What still needs a node: itself until it was followed, the nodes after it, and whoever holds it. */
  needed: Int32Array;
}

/** Nodes from which on columns grow by a quarter instead of twofold: a long take's are most of what its search holds. */
const manyNodes = 65_536;

function longer<Column extends Int32Array | Float64Array | Uint8Array>(column: Column, size: number): Column {
  const grown = new (column.constructor as new (size: number) => Column)(size);
  grown.set(column);
  return grown;
}

/** One column after the other, so that no more than one stands there twice. */
function grow(column: Columns, size: number): void {
  column.stroke = longer(column.stroke, size);
  column.slot = longer(column.slot, size);
  column.score = longer(column.score, size);
  column.before = longer(column.before, size);
  column.due = longer(column.due, size);
  column.period = longer(column.period, size);
  column.settled = longer(column.settled, size);
  column.how = longer(column.how, size);
  column.needed = longer(column.needed, size);
}

const columns = (size: number): Columns => ({
  stroke: new Int32Array(size),
  slot: new Int32Array(size),
  score: new Float64Array(size),
  before: new Int32Array(size),
  due: new Float64Array(size),
  period: new Float64Array(size),
  settled: new Int32Array(size),
  how: new Uint8Array(size),
  needed: new Int32Array(size),
});

/** An empty store for a number of strokes and slots; offers may reach `ahead` strokes beyond the last closed one. */
export const openPaths = (strokes: number, slots: number, ahead: number): Paths => {
  const rows = ahead + 1;
  const nodeAt = new Int32Array(rows * slots).fill(-1);
  const openAt: number[][] = Array.from({ length: rows }, () => []);
  const best = new Float64Array(strokes).fill(Number.NEGATIVE_INFINITY);
  const forgotten: number[] = [];
  let size = 4096;
  let used = 0;
  const column = columns(size);
  const fresh = (): number => {
    const again = forgotten.pop();
    if (again !== undefined) return again;
    if (used === size) {
      size = size < manyNodes ? 2 * size : Math.ceil(1.25 * size);
      grow(column, size);
    }
    return used++;
  };
  const hold = (node: number): void => {
    if (node >= 0) column.needed[node]!++;
  };
  /** The nodes that led only there go too: what is kept grows with the strokes, not with the paths tried. */
  const letGo = (node: number): void => {
    const { needed, before } = column;
    for (let last = node; last >= 0 && --needed[last]! === 0; last = before[last]!) forgotten.push(last);
  };
  const methods = {
    hold,
    letGo,
    followed: (nodes: readonly number[]) => {
      for (const node of nodes) letGo(node);
    },
    kind: (node: number) => kinds[column.how[node]!]!,
    bestAt: (j: number) => best[j]!,
    scoreAt: (j: number, s: number) => {
      const node = nodeAt[(j % rows) * slots + s]!;
      return node < 0 ? Number.NEGATIVE_INFINITY : column.score[node]!;
    },
    offer: (
      j: number,
      s: number,
      value: number,
      from: number,
      how: StepKind,
      nextDue: number,
      nextPeriod: number,
      strokesFollowed: number,
    ) => {
      const row = j % rows;
      const cell = row * slots + s;
      const known = nodeAt[cell]!;
      if (known >= 0 && column.score[known]! >= value) return;
      if (value > best[j]!) best[j] = value;
      const node = known >= 0 ? known : fresh();
      hold(from);
      if (known >= 0) letGo(column.before[known]!);
      else {
        column.needed[node] = 1;
        nodeAt[cell] = node;
        openAt[row]!.push(node);
      }
      column.stroke[node] = j;
      column.slot[node] = s;
      column.score[node] = value;
      column.before[node] = from;
      column.due[node] = nextDue;
      column.period[node] = nextPeriod;
      column.settled[node] = strokesFollowed;
      column.how[node] = kinds.indexOf(how);
    },
    close: (j: number, floor: number, most: number) => {
      const row = j % rows;
      const { score, slot } = column;
      const good: number[] = [];
      for (const node of openAt[row]!) {
        nodeAt[row * slots + slot[node]!] = -1;
        if (score[node]! >= floor) good.push(node);
        else letGo(node);
      }
      openAt[row] = [];
      good.sort((a, b) => score[b]! - score[a]!);
      const near = good.length > 0 ? score[good[0]!]! - followed.nats : 0;
      while (good.length > most || (good.length > followed.paths && score[good.at(-1)!]! < near))
        letGo(good.pop()!);
      return good;
    },
  };
  return Object.assign(column, methods);
};

import type { MainSlots } from './main-slots.ts';
import { bounceReach, graceAtLeast, graceWithin } from './prices.ts';
import type { Run } from './runs.ts';

/** What became of the strokes that lie on no main slot. */
export interface OtherStrokes {
  /** Strokes on written grace notes, by their main stroke, in order of time. */
  readonly gracesOf: ReadonlyMap<number, readonly number[]>;
  readonly extra: readonly number[];
  readonly doubled: readonly number[];
  readonly outside: readonly number[];
}

/** Beats that may pass between two runs for the strokes between them to count as part of the playing. Our judgement. */
const joined = 2.5;

/**
 * Sorts the strokes that no main slot took: grace notes before their main stroke, bounces close behind one,
 * extras inside a run or between two that follow closely, and the rest outside.
 */
export const otherStrokes = (question: {
  readonly runs: readonly Run[];
  readonly settled: readonly Int32Array[];
  readonly main: MainSlots;
  readonly times: Float64Array;
}): OtherStrokes => {
  const { runs, settled, main, times } = question;
  const slotOf = new Int32Array(times.length).fill(-1);
  const runOf = new Int32Array(times.length).fill(-1);
  const period: number[] = [];
  settled.forEach((strokes, r) => {
    const run = runs[r]!;
    const on = [...strokes.keys()].filter((i) => strokes[i]! >= 0);
    for (const i of on) {
      slotOf[strokes[i]!] = run.first + i;
      runOf[strokes[i]!] = r;
    }
    const [a, b] = [on[0], on.at(-1)];
    const beats =
      a === undefined || b === undefined ? 0 : main.beat[run.first + b]! - main.beat[run.first + a]!;
    period[r] = beats > 0 ? (times[strokes[b!]!]! - times[strokes[a!]!]!) / beats : 0.5;
  });
  const gracesOf = new Map<number, number[]>();
  const taken = new Uint8Array(times.length);
  for (let j = 0; j < times.length; j++) {
    let left = slotOf[j]! >= 0 ? main.graces[slotOf[j]!]! : 0;
    for (let i = j - 1; i >= 0 && left > 0 && slotOf[i]! < 0; i--, left--) {
      const ahead = times[j]! - times[i]!;
      if (ahead < graceAtLeast || ahead > graceWithin) break;
      gracesOf.set(j, [i, ...(gracesOf.get(j) ?? [])]);
      taken[i] = 1;
    }
  }
  const next = new Int32Array(times.length).fill(-1);
  for (let j = times.length - 2; j >= 0; j--) next[j] = slotOf[j + 1]! >= 0 ? j + 1 : next[j + 1]!;
  const extra: number[] = [];
  const doubled: number[] = [];
  const outside: number[] = [];
  let before = -1;
  for (let j = 0; j < times.length; j++) {
    if (slotOf[j]! >= 0) before = j;
    if (slotOf[j]! >= 0 || taken[j] === 1) continue;
    const after = next[j]!;
    const room = before < 0 ? 0 : main.room[slotOf[before]!]! * period[runOf[before]!]!;
    if (before >= 0 && times[j]! - times[before]! < bounceReach(room)) doubled.push(j);
    else if (before >= 0 && after >= 0) {
      const sameRun = runOf[before] === runOf[after];
      const close = times[after]! - times[before]! < joined * period[runOf[before]!]!;
      const goesOn = close && runs[runOf[after]!]!.kind !== 'begin';
      (sameRun || goesOn ? extra : outside).push(j);
    } else outside.push(j);
  }
  return { gracesOf, extra, doubled, outside };
};

import type { Segment } from './alignment.ts';
import type { MainSlots } from './main-slots.ts';
import type { Run } from './runs.ts';

/** A run or a part of one, all in one state. */
export interface Piece {
  readonly run: number;
  readonly first: number;
  readonly last: number;
  readonly state: Segment['state'];
}

/** Runs joined without being left: a new attempt begins where a run begins from outside. */
const attemptsOf = (runs: readonly Run[]): number[] => {
  let attempt = -1;
  return runs.map(({ kind }, i) => {
    if (i === 0 || kind === 'begin') attempt++;
    return attempt;
  });
};

/** The last slot of each line that each attempt comes to. */
const endsOf = (
  runs: readonly Run[],
  attempts: readonly number[],
  { line }: MainSlots,
): Map<number, number>[] => {
  const ends: Map<number, number>[] = [];
  runs.forEach(({ first, last }, r) => {
    ends[attempts[r]!] ??= new Map();
    const own = ends[attempts[r]!]!;
    for (let s = first; s <= last; s++) own.set(line[s]!, Math.max(s, own.get(line[s]!) ?? -1));
  });
  return ends;
};

/**
 * Decides which runs are graded. Of slots played again after a stop the latest playing that gets at least as
 * far in its line is graded and the earlier one is `abandoned`; a playing that gets less far is `abandoned`
 * itself. Repeats played in time on top of those asked for are `surplus`, so the first playing is graded.
 */
export const gradeRuns = (runs: readonly Run[], main: MainSlots): Piece[] => {
  const attempts = attemptsOf(runs);
  const ends = endsOf(runs, attempts, main);
  const furthest = (line: number, attempt: number): number => ends[attempt]!.get(line)!;
  /** Which run each slot is graded in, and what the slots of each run have become. */
  const gradedIn = new Int32Array(main.length).fill(-1);
  const states: Segment['state'][][] = runs.map(({ first, last }) =>
    Array.from({ length: last - first + 1 }, () => 'graded'),
  );
  runs.forEach((run, r) => {
    const reached = new Map<number, { mine: number; earlier: number }>();
    for (let s = run.first; s <= run.last; s++) {
      const earlier = gradedIn[s]!;
      if (earlier < 0) {
        gradedIn[s] = r;
        continue;
      }
      if (attempts[earlier] === attempts[r]) {
        states[r]![s - run.first] = 'surplus';
        continue;
      }
      const line = main.line[s]!;
      const known = reached.get(line) ?? {
        mine: furthest(line, attempts[r]!),
        earlier: furthest(line, attempts[earlier]!),
      };
      reached.set(line, known);
      if (known.mine >= known.earlier) {
        states[earlier]![s - runs[earlier]!.first] = 'abandoned';
        gradedIn[s] = r;
      } else states[r]![s - run.first] = 'abandoned';
    }
    for (const [line, { mine, earlier }] of reached) {
      if (mine < earlier) {
        for (let s = run.first; s <= run.last; s++) {
          if (main.line[s] === line && states[r]![s - run.first] === 'graded') {
            states[r]![s - run.first] = 'abandoned';
            if (gradedIn[s] === r) gradedIn[s] = -1;
          }
        }
      }
    }
  });
  return runs.flatMap((run, r) => {
    const pieces: Piece[] = [];
    states[r]!.forEach((state, i) => {
      const s = run.first + i;
      const last = pieces[pieces.length - 1];
      if (last?.state === state) pieces[pieces.length - 1] = { ...last, last: s };
      else pieces.push({ run: r, first: s, last: s, state });
    });
    return pieces;
  });
};

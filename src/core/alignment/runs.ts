import type { PathStep } from './find-path.ts';
import type { MainSlots } from './main-slots.ts';
import type { StepKind } from './paths.ts';

/** A stretch of the path through consecutive main slots without a break. */
export interface Run {
  /** How the run began. */
  readonly kind: StepKind;
  /** First and last main slot; slots missed at either end are counted in. */
  readonly first: number;
  readonly last: number;
  readonly steps: readonly PathStep[];
}

/** Whether the beat can't go on evenly from one line to the next: another tempo is asked, or none. */
const tempoChanges = (main: MainSlots, from: number, to: number): boolean =>
  main.line[from] !== main.line[to] && main.asked[main.line[from]!] !== main.asked[main.line[to]!];

/** First main slot of a run: a begin within the first beats of a bar means that its first slots were missed. */
const firstOf = (main: MainSlots, step: PathStep): number =>
  step.kind === 'begin' ? main.bars[main.bar[step.main]!]!.first : step.main;

/** Last main slot: what is left of the line counts as missed when it is less than a beat. */
const lastOf = (main: MainSlots, step: PathStep, next: PathStep | undefined): number => {
  if (next?.kind === 'slip') return Math.max(step.main, next.main - 1);
  const line = main.line[step.main]!;
  const within = main.beat[step.main]! + 1;
  let end = step.main;
  while (main.line[end + 1] === line && main.beat[end + 1]! < within) end++;
  return main.line[end + 1] === line ? step.main : end;
};

/** Cuts a path into runs at every slip, pause, jump and begin, and where a new line asks for another tempo. */
export const cutRuns = (path: readonly PathStep[], main: MainSlots): Run[] => {
  const runs: Run[] = [];
  let from = 0;
  for (let i = 1; i <= path.length; i++) {
    const step = path[i];
    const before = path[i - 1]!;
    if (step && step.kind === 'next' && !tempoChanges(main, before.main, step.main)) continue;
    const steps = path.slice(from, i);
    const first = firstOf(main, steps[0]!);
    runs.push({ kind: steps[0]!.kind, first, last: lastOf(main, before, step), steps });
    from = i;
  }
  return runs;
};

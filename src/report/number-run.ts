/** Whole numbers as `[step, times, step, times, …]`: each the one before plus a step, the first counted from 0. */
export type NumberRun = readonly number[];

/**
 * A column of whole numbers by its steps, each with how often it comes in a row: short where numbers stay or count on.
 *
 * @example packRun([0, 1, 2, 3, 3]) // [0, 1, 1, 3, 0, 1]
 */
export function packRun(column: readonly number[]): NumberRun {
  const run: number[] = [];
  column.forEach((value, i) => {
    const step = value - (column[i - 1] ?? 0);
    if (run.length > 0 && run.at(-2) === step) run[run.length - 1]! += 1;
    else run.push(step, 1);
  });
  return run;
}

/** The column that `packRun` made a run of. */
export function unpackRun(run: NumberRun): number[] {
  const column: number[] = [];
  let value = 0;
  for (let i = 0; i < run.length; i += 2) {
    for (let times = run[i + 1]!; times > 0; times--) {
      value += run[i]!;
      column.push(value);
    }
  }
  return column;
}

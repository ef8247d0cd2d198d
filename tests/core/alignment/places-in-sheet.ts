import type { Slot } from '../../../src/core/exercise/slot.ts';
import type { Part } from './simulated-take.ts';

/** Indices of the first slot of each bar. */
export const barStarts = (mains: readonly Slot[]): number[] =>
  mains.flatMap((slot, m) => {
    const before = mains[m - 1];
    return !before || before.line !== slot.line || before.repeat !== slot.repeat || before.bar !== slot.bar
      ? [m]
      : [];
  });
/** The sheet as a whole, played as it is written. */
export const whole = (mains: readonly Slot[]): Part => ({
  from: 0,
  to: mains.length - 1,
  after: 0,
  state: 'graded',
});

/** A slot well inside the sheet, not at a bar's edge. */
export const inside = (mains: readonly Slot[], share: number): number => {
  let m = Math.floor(mains.length * (0.15 + 0.7 * share));
  while (
    m < mains.length - 4 &&
    (mains[m]!.line !== mains[m + 2]!.line ||
      mains[m]!.divisions !== mains[m + 2]!.divisions ||
      mains[m - 1]!.line !== mains[m]!.line)
  )
    m++;
  return m;
};

import { wobble } from './clear-seconds.ts';

/**
 * Strokes taken for clicks lie anywhere within the wobble of where clicks are due, clicks there to a hundredth of a
 * millisecond (measured on rendered takes and on takes of recorded strokes): how unlikely it must be that chance lies so close.
 */
const chanceOfStrokes = 1e-3;
const readingSeconds = 0.00001;

/**
 * Whether three clicks or more lie closer to a straight line than strokes that happen to fall near it would; `off` is how far
 * each lies from the line that fits them best, s.
 *
 * @example closerThanChance([4e-6, -8e-6, 4e-6]) // true
 */
export function closerThanChance(off: readonly number[]): boolean {
  const free = off.length - 2;
  const scatter = Math.sqrt(off.reduce((sum, seconds) => sum + seconds ** 2, 0) / free);
  const ofChance = wobble / Math.sqrt(3);
  return scatter < readingSeconds || (scatter / ofChance) ** free < chanceOfStrokes;
}

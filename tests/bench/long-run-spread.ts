import {
  asynchronies,
  normalFrom,
  type Player,
  uniformFrom,
} from '../core/measures/simulated-performance.ts';

/** A simulated player's timing spread in the long run, ms: scatter round the lines of plain windows of 13 strokes. */
export function longRunSpread(player: Player): number {
  const a = asynchronies(player, 60_000, normalFrom(uniformFrom(99)));
  let squares = 0;
  let windows = 0;
  for (let i = 0; i + 13 <= a.length; i += 3, windows++) {
    const window = a.subarray(i, i + 13);
    const centre = window.reduce((sum, v) => sum + v, 0) / 13;
    let along = 0;
    let around = 0;
    window.forEach((v, k) => {
      along += (k - 6) * (v - centre);
      around += (v - centre) ** 2;
    });
    squares += (around - along ** 2 / 182) / 11;
  }
  return Math.sqrt(squares / windows) * 1000;
}

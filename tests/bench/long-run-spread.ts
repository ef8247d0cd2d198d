import type { Player } from '../core/measures/simulated-performance.ts';

const window = 13;

/**
 * Half the expected square of what two deviations `lag` strokes apart differ by, s². With a click from the stationary
 * autocovariances of linear phase correction (Vorberg & Schulze 2002), without one from Wing & Kristofferson 1973.
 */
function halfVariogram({ clock, motor, correction, selfPaced }: Player, lag: number): number {
  if (lag === 0) return 0;
  if (selfPaced) return (lag * clock ** 2) / 2 + motor ** 2;
  if (correction === 1) return clock ** 2 + motor ** 2;
  const variance = (clock ** 2 + 2 * correction * motor ** 2) / (correction * (2 - correction));
  const next = (1 - correction) * (variance - motor ** 2) - correction * motor ** 2;
  return variance - (1 - correction) ** (lag - 1) * next;
}

/**
 * A simulated player's timing spread in the long run, ms: the expected scatter round the lines of plain windows of 13
 * strokes, Σᵢⱼ Mᵢⱼ γ(i − j) / 11 with M the projection that takes a line out; since M leaves out constants, −variogram/2
 * serves for γ.
 */
export function longRunSpread(player: Player): number {
  const middle = (window - 1) / 2;
  const squares = (window * (window * window - 1)) / 12;
  let sum = 0;
  for (let i = 0; i < window; i++) {
    for (let j = 0; j < window; j++) {
      const line = 1 / window + ((i - middle) * (j - middle)) / squares;
      sum -= ((i === j ? 1 : 0) - line) * halfVariogram(player, Math.abs(i - j));
    }
  }
  return Math.sqrt(sum / (window - 2)) * 1000;
}

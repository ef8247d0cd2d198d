import type { ListeningTake } from './listening-take.ts';

/** By how much the taps are lowered where that is tried, dB: plain to hear, nothing vanishes. Our judgement. */
export const tapsLoweredDb = 6;

/**
 * Factor that makes the take as it was played as loud as the same with its taps lowered: the root of the ratio of the
 * strokes' summed power, 10^(level/10). Comparing at unlike loudness favours the louder one, whatever else differs.
 *
 * @example sameLoudness({ tap: [false, true], levelDb: [-10, -10] }) // √((1 + 10^-0.6) / 2) = 0.79…
 */
export function sameLoudness({ tap, levelDb }: Pick<ListeningTake['strokes'], 'tap' | 'levelDb'>): number {
  const power = (loweredDb: number) =>
    levelDb.reduce((sum, level, i) => sum + 10 ** ((level - (tap[i] ? loweredDb : 0)) / 10), 0);
  return levelDb.length === 0 ? 1 : Math.sqrt(power(tapsLoweredDb) / power(0));
}

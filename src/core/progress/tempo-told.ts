import { likeTempo } from './conditions.ts';

/**
 * The tempo that a playing counts as, BPM: the one asked for, or the one played where the two aren't like ones; null
 * where neither is known.
 *
 * @example tempoTold(80, 92.4) // 92.4
 */
export const tempoTold = (asked: number | null, played: number | null): number | null =>
  asked !== null && (played === null || likeTempo(asked, played)) ? asked : played;

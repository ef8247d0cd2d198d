import type { Stroke } from './stroke.ts';

/** Attacks nearer than this may be two waves of one stroke: stick and wires, head and shell, a near wall; s. */
const longestLag = 0.036;
/** Waves of one stroke keep their lag within this (s) and their levels within this (dB); players scatter by more. */
const alike = { seconds: 0.0009, levelDb: 5 };
/** Pairs alike that make a habit of the drum, and their share among all pairs with nearly that lag. */
const habit = { pairs: 4, nearSeconds: 0.006, share: 0.4 };
/** What is this much louder than the attack before it (dB) is a stroke after a grace note, unless nearly all are alike. */
const louder = { stepDb: 8, share: 0.75 };

interface Pair {
  /** Index of the later attack. */
  readonly later: number;
  readonly lag: number;
  readonly stepDb: number;
}

/**
 * Drops the second wave of strokes: an attack that follows another at a lag and with a level step that come again and
 * again. A grace note's lag scatters by milliseconds, so flams and drags stay. Linear in the number of attacks for a
 * bounded density of them.
 */
export function mergeWaves(strokes: readonly Stroke[]): Stroke[] {
  const pairs: Pair[] = [];
  for (let later = 1; later < strokes.length; later++) {
    for (let first = later - 1; first >= 0; first--) {
      const lag = strokes[later]!.time - strokes[first]!.time;
      // Lags beyond the longest count among those near it, or the edge would make a habit of chance.
      if (lag > longestLag + habit.nearSeconds) break;
      pairs.push({ later, lag, stepDb: strokes[later]!.levelDb - strokes[first]!.levelDb });
    }
  }
  pairs.sort((a, b) => a.lag - b.lag);
  const dropped = new Set<number>();
  let from = 0;
  pairs.forEach((pair, i) => {
    if (pair.lag > longestLag) return;
    while (pair.lag - pairs[from]!.lag > habit.nearSeconds) from++;
    let like = 0;
    let near = 0;
    for (let k = from; k < pairs.length && pairs[k]!.lag - pair.lag <= habit.nearSeconds; k++) {
      if (k === i) continue;
      near++;
      const { lag, stepDb } = pairs[k]!;
      if (Math.abs(lag - pair.lag) < alike.seconds && Math.abs(stepDb - pair.stepDb) < alike.levelDb) like++;
    }
    if (like + 1 >= habit.pairs && like >= (pair.stepDb > louder.stepDb ? louder.share : habit.share) * near)
      dropped.add(pair.later);
  });
  return strokes.filter((_, i) => !dropped.has(i));
}

import type { Performance } from '../measures/performance.ts';
import type { TakeResult } from '../result/take-result.ts';

/** Local tempo at each stroke that has one. */
export function tempoColumns({ strokes, timing, alignment }: Performance): TakeResult['tempo'] {
  const tempo: TakeResult['tempo'] = { time: [], bpm: [], segment: [] };
  if (timing === null) return tempo;
  const segmentOf = new Map(alignment.matches.map((match) => [match.stroke, match.segment]));
  strokes.forEach((played, i) => {
    const period = timing.period[i] ?? null;
    if (period === null) return;
    tempo.time.push(played.time);
    tempo.bpm.push(60 / period);
    tempo.segment.push(segmentOf.get(played.stroke)!);
  });
  return tempo;
}

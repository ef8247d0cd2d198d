import type { TakeResult } from '../core/result/take-result.ts';

/** Seconds of the recording at which the accents leave or regain their partials all together, as measured. */
export function accentTurnTimes({ measures, strokes }: TakeResult): number[] {
  const found = measures.find(({ id, scope }) => id === 'turned-accents' && Object.keys(scope).length === 0);
  if (found?.outcome.state !== 'measured') return [];
  return found.outcome.pointsAt.flatMap((stroke) => strokes.time[stroke] ?? []).sort((a, b) => a - b);
}

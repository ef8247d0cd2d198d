import { pointsShown, thinOut } from '../charts/thin-out.ts';
import type { TakeResult } from '../core/result/take-result.ts';

/** Measures that pictures show; the rest stand in the tables alone. */
const drawnMeasures: readonly string[] = ['accent-bend', 'turned-accents'];

/** The columns and parts that no picture reads are empty; everything else is as in the result. */
export type DrawnPart = TakeResult;

/**
 * The part of a result that its pictures read, for embedding in a report: half the size of the whole. Not a result
 * that could be kept: columns are missing.
 */
export function drawnPart(result: TakeResult): DrawnPart {
  return {
    ...result,
    strokes: { ...result.strokes, timeSe: [], levelSe: [] },
    slots: { ...result.slots, hand: [], buzz: [] },
    tempo: shownTempo(result),
    measures: result.measures.filter(({ id }) => drawnMeasures.includes(id)),
    advice: [],
    warnings: [],
    cannotTell: [],
  };
}

/** The points of the tempo that its picture shows of each run. */
function shownTempo({ tempo }: TakeResult): TakeResult['tempo'] {
  const points = tempo.time.map((time, i) => ({ time, y: tempo.bpm[i]!, segment: tempo.segment[i]! }));
  const shown = [...new Set(tempo.segment)].flatMap((run) =>
    thinOut(
      points.filter((point) => point.segment === run),
      pointsShown,
    ),
  );
  return {
    time: shown.map((point) => point.time),
    bpm: shown.map((point) => point.y),
    segment: shown.map((point) => point.segment),
  };
}

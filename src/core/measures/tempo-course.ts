import type { Performance } from './performance.ts';
import { correctingModels, freeModels, type TempoSeries, type WanderModel } from './tempo-fit.ts';
import type { TimingModel } from './timing-model.ts';

/** A take's onsets against the tempo asked for, ready for a regression over the time played. */
interface TempoCourse {
  /** Asked time played so far, breaks left out, from −1 at the start to 1 at the end. */
  readonly played: Float64Array;
  /** Half of the whole asked time, s. */
  readonly half: number;
  readonly series: Omit<TempoSeries, 'columns'>;
  readonly models: readonly WanderModel[];
}

/**
 * Onsets without habits, less the time they are asked for, over the judged strokes. `fallbackPeriod` (s a beat) stands
 * in for lines whose tempo was left open. With a click, deviations are corrected. Without one in the recording nobody
 * knows, and the wider belief, that they add up, is the safe one.
 */
export function tempoCourse(
  { strokes, sheet, alignment }: Performance,
  timing: TimingModel,
  fallbackPeriod: number,
): TempoCourse {
  const judged = strokes.map((stroke, i) => ({ stroke, i })).filter(({ i }) => timing.judged[i] === 1);
  const n = judged.length;
  const asked = new Float64Array(n);
  const place = new Float64Array(n);
  const stretch = new Int32Array(n);
  const y = new Float64Array(n);
  let start = 0;
  judged.forEach(({ stroke, i }, k) => {
    const bpm = sheet.lines[stroke.slot.line]!.bpm;
    const period = bpm === null ? fallbackPeriod : 60 / bpm;
    const before = judged[k - 1]?.stroke;
    if (before && before.stretch !== stroke.stretch) start = asked[k - 1]! - stroke.position * period;
    else if (!before) start = -stroke.position * period;
    asked[k] = start + stroke.position * period;
    place[k] = stroke.position * stroke.slot.divisions;
    stretch[k] = stroke.stretch;
    y[k] = timing.withoutHabits[i]! - asked[k]!;
  });
  // In strokes of different divisions the later stroke's own count can run backwards; time can't.
  for (let k = 1; k < n; k++) {
    if (stretch[k] === stretch[k - 1]) place[k] = Math.max(place[k]!, place[k - 1]! + 0.5);
  }
  const half = Math.max(1e-9, (asked[n - 1]! - asked[0]!) / 2);
  const click = alignment.reference === 'played-click' || alignment.reference === 'heard-click';
  return {
    played: asked.map((time) => (time - asked[0]!) / half - 1),
    half,
    series: { y, stretch, place },
    models: click ? correctingModels : freeModels,
  };
}

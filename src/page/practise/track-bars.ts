import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import { openTempo } from '../../core/click-track/plan-clicks.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { TrackBar } from './held-silence.ts';
import { placeAt } from './place-at.ts';

/** The bars of a click track after its count-in. */
export function trackBars(sheet: Sheet, plan: ClickPlan): TrackBar[] {
  const starts = plan.clicks.filter(({ kind }) => kind === 'bar').map(({ time }) => time);
  return starts.map((from, i) => {
    const place = placeAt(sheet, plan, from);
    const line = sheet.lines['line' in place ? place.line - 1 : 0]!;
    const beatSeconds = 60 / (line.bpm ?? openTempo);
    const parts = Math.max(...line.beats.map(({ partials }) => partials.length));
    return { from, to: starts[i + 1] ?? plan.duration, beatSeconds, stepSeconds: beatSeconds / parts };
  });
}

import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import { openTempo } from '../../core/click-track/plan-clicks.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';

/** Where in a sheet a moment lies, everything counted from 1 as drummers do. */
export type Place =
  /** Before the first beat: the beat counted, 0 before the first count. */
  | { readonly phase: 'count-in'; readonly beat: number; readonly of: number }
  | {
      readonly phase: 'play';
      readonly line: number;
      readonly repeat: number;
      /** Beat within the repeat. */
      readonly beat: number;
      readonly silent: boolean;
    }
  /** Between two lines: the beats that are left. */
  | { readonly phase: 'rest'; readonly line: number; readonly beatsLeft: number }
  | { readonly phase: 'over' };

/**
 * Where a sheet is at a moment of its click track, s from the track's start.
 *
 * @example placeAt(sheet, plan, plan.firstBeat) // { phase: 'play', line: 1, repeat: 1, beat: 1, silent: false }
 */
export function placeAt({ lines }: Sheet, plan: ClickPlan, time: number): Place {
  if (time < plan.firstBeat) {
    const counts = plan.clicks.filter(({ kind }) => kind === 'count-in');
    return {
      phase: 'count-in',
      beat: counts.filter((click) => click.time <= time).length,
      of: counts.length,
    };
  }
  const clicks = plan.clicks.filter((click) => click.kind !== 'count-in');
  const silent = clicks.findLast((click) => click.time <= time)?.audible === false;
  let from = plan.firstBeat;
  for (const [i, { bpm, beats, repeats, restBeats }] of lines.entries()) {
    const seconds = 60 / (bpm ?? openTempo);
    // A beat that begins now has begun, whatever the last digit says.
    const beat = Math.floor((time - from) / seconds + 1e-6);
    const played = beats.length * repeats;
    if (beat < played) {
      const repeat = Math.floor(beat / beats.length);
      return {
        phase: 'play',
        line: i + 1,
        repeat: repeat + 1,
        beat: beat - repeat * beats.length + 1,
        silent,
      };
    }
    if (i === lines.length - 1) break;
    if (beat < played + restBeats)
      return { phase: 'rest', line: i + 1, beatsLeft: Math.ceil(played + restBeats - beat) };
    from += (played + restBeats) * seconds;
  }
  return { phase: 'over' };
}

import { nextSilence } from '../../core/click-track/next-silence.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';
import { circularSummary } from '../../core/stats/circular-summary.ts';

/** A bar of a click track: s from the track's start, s of its beats, and of the smallest written step in it. */
export interface TrackBar {
  readonly from: number;
  readonly to: number;
  readonly beatSeconds: number;
  readonly stepSeconds: number;
}

/** Bars that sound between silences: one to find the beat again, one to play with it. Our judgement. */
const heardBars = 2;

/** Strokes of a bar that tell where it lies, and how much alike their places in the step must be. Our judgement. */
const fewest = 3;
const alike = 0.5;

interface HeldSilence {
  /** Whether a bar, by its index and asked in order, sounds. `strokes` are the times of all strokes heard so far. */
  sounds(bar: number, strokes: readonly number[]): boolean;
  /** The silences so far. */
  stretches(): readonly SilentStretch[];
}

/**
 * Silences that lengthen as long as the beat is held: after each, the places of the strokes in its last bar are held
 * against those of the last bar that sounded, and `nextSilence` says how long the next one is. The delay between what
 * is heard and the track is in both, and cancels.
 */
export function heldSilence(bars: readonly TrackBar[]): HeldSilence {
  let length = 1;
  let left = heardBars;
  let silent = false;
  let asked = -1;
  const stretches: SilentStretch[] = [];
  return {
    stretches: () => stretches,
    sounds(bar, strokes) {
      while (asked < bar) {
        asked += 1;
        if (left === 0) {
          if (silent) length = nextSilence(length, hold(asked, length, strokes));
          silent = !silent;
          left = silent ? length : heardBars;
        }
        left -= 1;
        const { from, to } = bars[asked] ?? { from: 0, to: 0 };
        const last = stretches.at(-1);
        if (silent && last?.to === from) stretches[stretches.length - 1] = { from: last.from, to };
        else if (silent) stretches.push({ from, to });
      }
      return !silent;
    },
  };

  /** How far the last silent bar lies from the last one that sounded before it; null where strokes don't tell. */
  function hold(now: number, silentFor: number, strokes: readonly number[]) {
    const [before, last] = [bars[now - silentFor - 1], bars[now - 1]];
    if (before === undefined || last === undefined) return null;
    const [there, here] = [placeIn(before, strokes), placeIn(last, strokes)];
    if (there === null || here === null || before.stepSeconds !== last.stepSeconds) return null;
    const turn = here - there;
    const wrapped = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    return { offSeconds: (wrapped / (2 * Math.PI)) * last.stepSeconds, beatSeconds: last.beatSeconds };
  }
}

/** Where a bar's strokes lie within the smallest step, as an angle. */
function placeIn({ from, to, stepSeconds }: TrackBar, strokes: readonly number[]): number | null {
  const angles = strokes
    .filter((time) => time >= from && time < to)
    .map((time) => (2 * Math.PI * (time - from)) / stepSeconds);
  if (angles.length < fewest) return null;
  const { direction, resultant } = circularSummary(angles);
  return resultant < alike ? null : direction;
}

import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { heldSilence } from './held-silence.ts';
import { trackBars } from './track-bars.ts';

/** s before a bar at which its click is let through or held back: a click has died away by then, and none begins. */
const ahead = 0.06;

export interface SilenceControl {
  /** Strokes heard, and how much of the recording was heard in all; both s from its first sample. */
  hear(strokes: readonly number[], heardSeconds: number): void;
  /** To be called many times a second while the track runs. */
  tick(): void;
  silent(): boolean;
  stretches(): readonly SilentStretch[];
}

interface Track {
  readonly sheet: Sheet;
  readonly plan: ClickPlan;
  readonly volume: number;
  /** s of the track that have left the page. */
  readonly position: () => number;
  readonly setVolume: (volume: number) => void;
}

/** Holds the click back for whole bars while a take runs, longer and longer as long as the beat is held. */
export function silenceControl({ sheet, plan, volume, position, setVolume }: Track): SilenceControl {
  const bars = trackBars(sheet, plan);
  const held = heldSilence(bars);
  const strokes: number[] = [];
  // From the recording's clock to the track's: the delay in it is the same all through, and cancels.
  let shift: number | null = null;
  let next = 0;
  let sounding = true;
  return {
    hear(times, heardSeconds) {
      shift ??= position() - heardSeconds;
      for (const time of times) strokes.push(time + shift);
    },
    tick() {
      for (; next < bars.length && bars[next]!.from <= position() + ahead; next++) {
        const sounds = held.sounds(next, strokes);
        if (sounds !== sounding) setVolume(sounds ? volume : 0);
        sounding = sounds;
      }
    },
    silent: () => !sounding,
    stretches: () => held.stretches(),
  };
}

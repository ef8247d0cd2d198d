import type { ClickKind, ClickPlan } from '../../core/click-track/click-plan.ts';
import { clickSamples } from '../../core/click-track/click-samples.ts';
import { clickVoice } from '../../core/click-track/click-voices.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';

/** A click track that is to be played. */
export interface ClickToPlay {
  readonly plan: ClickPlan;
  /** Between 0 and 1. */
  readonly volume: number;
  /** Stretches of the track that `setVolume` has silenced so far, s; asked at the end. */
  readonly silences?: () => readonly SilentStretch[];
}

/** A click track that sounds. */
interface PlayingClicks {
  /** Context time of the track's first sample, s; on a whole frame. */
  readonly at: number;
  /** The plan that is played: the first one, or the one that took its place. */
  plan(): ClickPlan;
  /** Goes on by another plan, from the first click that isn't under way yet; what has sounded must stand in it too. */
  setPlan(plan: ClickPlan): void;
  /** Between 0 and 1. */
  setVolume(volume: number): void;
  stop(): void;
}

/** Clicks are handed to the audio clock so long before they sound, s: a page out of sight may act once a second. */
const ahead = 2.5;
const everyMs = 100;
/** Quick enough to stop a click, slow enough not to make one, s. */
const fade = 0.01;

/** Plays a plan's clicks on the audio clock, each from the sample nearest to its time, as `renderClicks` puts them. */
export function playClicks(
  context: AudioContext,
  first: ClickPlan,
  { after, volume }: { readonly after: number; readonly volume: number },
): PlayingClicks {
  const { sampleRate } = context;
  const at = Math.ceil((context.currentTime + after) * sampleRate) / sampleRate;
  const gain = new GainNode(context, { gain: volume });
  gain.connect(context.destination);
  const buffers = new Map<string, AudioBuffer>();
  const bufferOf = ({ sound, bell }: ClickPlan, kind: ClickKind) => {
    const name = `${sound} ${kind} ${bell}`;
    const known = buffers.get(name);
    if (known !== undefined) return known;
    const samples = new Float32Array(clickSamples(clickVoice(sound, kind, bell), sampleRate));
    const buffer = new AudioBuffer({ length: samples.length, numberOfChannels: 1, sampleRate });
    buffer.copyToChannel(samples, 0);
    buffers.set(name, buffer);
    return buffer;
  };
  let plan = first;
  /** Clicks up to this time of the track have been handed over, s. */
  let handedOver = -1;
  const handOver = () => {
    const to = context.currentTime + ahead - at;
    for (const { time, kind, audible } of plan.clicks) {
      if (time <= handedOver || time > to) continue;
      const start = at + Math.round(time * sampleRate) / sampleRate;
      // Sounded late it would lead the player astray; left out it is only missing.
      if (!audible || start < context.currentTime) continue;
      const source = new AudioBufferSourceNode(context, { buffer: bufferOf(plan, kind) });
      source.connect(gain);
      source.start(start);
    }
    handedOver = Math.max(handedOver, to);
  };
  handOver();
  const timer = setInterval(handOver, everyMs);
  return {
    at,
    plan: () => plan,
    setPlan(next) {
      plan = next;
    },
    setVolume: (next) => gain.gain.setTargetAtTime(next, context.currentTime, fade),
    stop() {
      clearInterval(timer);
      gain.gain.setTargetAtTime(0, context.currentTime, fade / 3);
      setTimeout(() => gain.disconnect(), 1000 * 5 * fade);
    },
  };
}

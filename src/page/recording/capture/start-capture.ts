import workletUrl from './capture-worklet.ts?worker&url';
import type { CapturedBlock } from './captured-block.ts';
import { type ClockFollowed, clockAtStart, followClock } from './follow-clock.ts';
import { type FramesFollowed, followFrames, nothingFollowed } from './follow-frames.ts';

/** Samples as they come: `at` is their frame in the recording, which begins with the first of them. */
type CaptureListener = (samples: Float32Array<ArrayBuffer>, at: number) => void;

/** A recording under way. */
interface Capture {
  /** The context's frame of the recording's first sample, or null until it has come. */
  first(): number | null;
  frames(): FramesFollowed;
  stalls(): ClockFollowed['stalls'];
  /** Everything until now in one piece; gaps are silence. */
  samples(): Float32Array<ArrayBuffer>;
  stop(): void;
}

const loaded = new WeakMap<BaseAudioContext, Promise<void>>();

/** Loads the part of the page that runs in the audio thread; once for each context. */
export function loadCapture(context: BaseAudioContext): Promise<void> {
  const before = loaded.get(context);
  if (before !== undefined) return before;
  const loading = context.audioWorklet.addModule(workletUrl);
  loaded.set(context, loading);
  return loading;
}

/**
 * Records what a node gives, sample for sample. `listen` hears of every block as it comes; without `keep` nothing else
 * does, and `samples` is silence.
 */
export async function startCapture(
  context: AudioContext,
  input: AudioNode,
  listen: CaptureListener = () => undefined,
  keep = true,
): Promise<Capture> {
  await loadCapture(context);
  const node = new AudioWorkletNode(context, 'evenhand-capture', { numberOfInputs: 1, numberOfOutputs: 1 });
  // Some browsers run a node only while it leads to the loudspeaker: through nothing, here.
  const silence = new GainNode(context, { gain: 0 });
  let followed: FramesFollowed = nothingFollowed;
  let clock = clockAtStart;
  let stopped = false;
  const parts: { readonly at: number; readonly samples: Float32Array<ArrayBuffer> }[] = [];
  node.port.addEventListener('message', ({ data }: MessageEvent<CapturedBlock>) => {
    if (stopped) return;
    const step = followFrames(followed, data);
    followed = step.followed;
    clock = followClock(clock, data, step.at, context.sampleRate);
    const samples = step.skip > 0 ? data.samples.slice(step.skip) : data.samples;
    if (keep) parts.push({ at: step.at, samples });
    listen(samples, step.at);
  });
  node.port.start();
  input.connect(node);
  node.connect(silence).connect(context.destination);
  return {
    first: () => followed.first,
    frames: () => followed,
    stalls: () => clock.stalls,
    samples() {
      const all = new Float32Array(followed.length);
      for (const { at, samples } of parts) all.set(samples, at);
      return all;
    },
    stop() {
      stopped = true;
      input.disconnect(node);
      node.disconnect();
      silence.disconnect();
    },
  };
}

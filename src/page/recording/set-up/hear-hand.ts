import type { HandHeard } from '../../../core/progress/set-up-reference.ts';
import { startCapture } from '../capture/start-capture.ts';
import type { Microphone } from '../open-microphone.ts';

export interface ListenedHand {
  readonly heard: HandHeard;
  /** Level between strokes, dBFS. */
  readonly noiseFloorDb: number;
}

/** Eight strokes and a breath, s. */
const mostSeconds = 15;

/** Records until it is told to stop, and tells the strokes of one hand; null where nothing came. */
export async function hearHand(
  { context, input }: Microphone,
  stop: AbortSignal,
  progress: (share: number) => void,
): Promise<ListenedHand | null> {
  const [{ hearStrokes }, { handForReference }] = await Promise.all([
    import('../../../core/onsets/hear-strokes.ts'),
    import('../../../core/progress/set-up-reference.ts'),
  ]);
  const capture = await startCapture(context, input);
  const { sampleRate } = context;
  const seconds = () => capture.frames().length / sampleRate;
  while (!stop.aborted && seconds() < mostSeconds) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    progress(seconds() / mostSeconds);
  }
  capture.stop();
  const samples = capture.samples();
  if (samples.length === 0) return null;
  const hearing = hearStrokes({
    sampleRate,
    channels: 1,
    length: samples.length,
    read(_, from, to) {
      const read = new Float32Array(Math.max(0, to - from));
      const first = Math.max(0, from);
      if (first < Math.min(to, samples.length))
        read.set(samples.subarray(first, Math.min(to, samples.length)), first - from);
      return read;
    },
  });
  return { heard: handForReference(hearing.sounds), noiseFloorDb: hearing.noiseFloorDb };
}

import type { HandHeard } from '../../../core/progress/set-up-reference.ts';
import { sourceOfSamples } from '../../engine/source-of-samples.ts';
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
  }
  capture.stop();
  const samples = capture.samples();
  if (samples.length === 0) return null;
  const hearing = hearStrokes(sourceOfSamples([samples], sampleRate));
  return { heard: handForReference(hearing.sounds), noiseFloorDb: hearing.noiseFloorDb };
}

import type { Finding, HeardRecording } from './heard-recording.ts';

/** Under so many strokes there is no score and hardly a figure: eight beats of triplets. */
const fewestStrokes = 24;

/** Too little was recorded to grade it well. Single figures say by themselves when strokes are too few for them. */
export function recordingLength({ performance, source }: HeardRecording): Finding | null {
  const strokes = performance.strokes.length;
  if (strokes >= fewestStrokes) return null;
  const seconds = source.length / source.sampleRate;
  return { code: 'short-take', facts: { strokes, needed: fewestStrokes, seconds }, spoils: [] };
}

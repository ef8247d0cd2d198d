import type { HeardRecording } from './heard-recording.ts';

/** Noise that is added before samples are made coarse, to hide their steps, comes to 5 dB over what the steps make, and more with a quiet place. */
const hidingDb = 7;

/** Whether all noise that a recording has is that of its coarse samples, so that nothing is told of the place. */
export const stepNoiseAlone = ({ coarse, noiseDb }: Pick<HeardRecording, 'coarse' | 'noiseDb'>): boolean =>
  coarse !== null && noiseDb <= coarse.noiseDb + hidingDb;

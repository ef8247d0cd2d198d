import type { Stroke } from '../../src/core/onsets/stroke.ts';

/** A stroke as it might be heard, all but its time and what is told of it made up. */
export function heardSound(time: number, known: Partial<Stroke> = {}): Stroke {
  return {
    time,
    timeSe: 1e-5,
    levelDb: -20,
    levelSe: 0.1,
    sound: 'pad',
    evidence: 200,
    timbre: null,
    ...known,
  };
}

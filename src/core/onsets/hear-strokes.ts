import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { startListening } from './listening.ts';
import type { Hearing } from './stroke.ts';

/**
 * Finds the strokes of a recording, their times and levels, and the clicks of a metronome, in order of time. Uses
 * nothing but the sound: neither exercise nor tempo. Linear in length. `tell` hears how far it has come.
 */
export function hearStrokes(recording: Source, tell?: WorkTold): Hearing {
  const hearing = startListening().end(pickup(recording), tell);
  tell?.('listening', 1);
  return hearing;
}

/** What is being done: the recording is listened to, its strokes are laid on the sheet, or measured. */
export type WorkPhase = 'listening' | 'laying' | 'measuring';

/** Is told how far a phase has come, 0 … 1. A long recording tells many times, and never goes back within a phase. */
export type WorkTold = (phase: WorkPhase, share: number) => void;

/** The same with the shares of a part of a phase put where that part stands in the whole of it. */
export function partOfWork(tell: WorkTold | undefined, from: number, to: number): WorkTold | undefined {
  return tell && ((phase, share) => tell(phase, from + (to - from) * share));
}

import { bandSplit, bandStepFrames, framesAtATime } from '../signal/band-frames.ts';
import type { Source } from '../signal/source.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { attackChain, enoughEvidence } from './attack-chain.ts';
import { type RiseCandidate, type RisesFound, riseFrames } from './rise-candidate.ts';
import { riseSearch } from './rise-search.ts';
import type { Stroke } from './stroke.ts';

/** Everything with an attack in a recording. */
export interface AttacksFound extends RisesFound {
  /** In the order of their rises; none has a class yet but `pad`. */
  readonly attacks: readonly Stroke[];
}

/** A search for attacks in a recording that comes piece by piece. */
export interface AttackSearch {
  /**
   * Goes on with what there is of the recording, the same as before and longer, but with no more than `most` seconds of
   * it. Attacks that are decided now, about 0.1 s after they were struck, in order.
   */
  goOn(recording: Source, most?: number): readonly Stroke[];
  /** The recording is over: goes on to its end. `tell` hears of it every few hundred milliseconds of the recording. */
  end(recording: Source, tell?: WorkTold): AttacksFound;
  /** s of the recording that have been searched. */
  seconds(): number;
}

/** The next rise may stand so many frames before the place up to which all are known. */
const placeBefore = 2;

/**
 * Begins a search for attacks in a one-channel recording at `sampleRate`. How the recording is cut into pieces changes
 * nothing, not even the last digit. Linear; memory grows with what is found.
 */
export function attackSearch(sampleRate: number): AttackSearch {
  const { layout, inputHop, next } = bandSplit(sampleRate);
  const search = riseSearch(layout);
  const measured = attackChain(layout.frameRate);
  const attacks: Stroke[] = [];
  const room = new Float32Array(framesAtATime * inputHop);
  let frames = 0;
  let looked = 0;
  /** The last rise with enough evidence: how long it stands alone isn't known yet. */
  let waiting: RiseCandidate | null = null;

  function advance(source: Source, to: number): void {
    const count = Math.min(framesAtATime, to - frames);
    search.add(next(source.read(0, frames * inputHop, (frames + count) * inputHop, room)));
    frames += count;
    measure(source, search.known - placeBefore);
  }

  /** Measures the rises that are known to stand alone long enough, everything before frame `known` being known. */
  function measure(source: Source, known: number): void {
    const take = (rise: RiseCandidate, alone: number) => {
      const attack = measured(source, rise, alone);
      if (attack !== null) attacks.push(attack);
    };
    for (; looked < search.rises.length; looked++) {
      const rise = search.rises[looked]!;
      if (rise.evidence < enoughEvidence) continue;
      if (waiting !== null) take(waiting, rise.frame - waiting.frame);
      waiting = rise;
    }
    // What comes after its aftermath changes nothing of it.
    if (waiting === null || known - waiting.frame < riseFrames.after.to) return;
    take(waiting, Number.POSITIVE_INFINITY);
    waiting = null;
  }

  return {
    seconds: () => frames / layout.frameRate,
    goOn(source, most = Number.POSITIVE_INFINITY) {
      const before = attacks.length;
      const there = Math.min(source.length / inputHop, frames + most * layout.frameRate);
      const to = Math.floor(there / bandStepFrames) * bandStepFrames;
      while (frames < to) advance(source, to);
      return attacks.slice(before);
    },
    end(source, tell) {
      const to = Math.ceil(source.length / inputHop);
      while (frames < to) {
        advance(source, to);
        tell?.('listening', frames / to);
      }
      const { rises, floorPower } = search.end();
      measure(source, Number.POSITIVE_INFINITY);
      return { attacks, rises, floorPower };
    },
  };
}

/** Everything with an attack in a recording of one channel that is all there. */
export function attacksOf(source: Source, tell?: WorkTold): AttacksFound {
  return attackSearch(source.sampleRate).end(source, tell);
}

import { takeAgainstTake } from '../core/progress/take-against-take.ts';
import type { PairTake, TakePair } from '../report/weeks/take-pair-page.ts';
import type { OpenedTake } from './read-take.ts';
import { takeConditions } from './take-conditions.ts';

/** A kept take as a page on two takes shows it: what was played and when, in words, and its sound as a data URI. */
export interface PairSide extends Pick<PairTake, 'played' | 'exercise' | 'sound'> {
  readonly opened: Pick<OpenedTake, 'take' | 'result'>;
}

/** Two kept takes held against each other. */
export function takePair(first: PairSide, second: PairSide): TakePair {
  return {
    takes: [pairTake(first), pairTake(second)],
    compared: takeAgainstTake(takeConditions(first.opened), takeConditions(second.opened)),
  };
}

function pairTake({ opened, ...words }: PairSide): PairTake {
  const { take, result } = opened;
  const { bpm } = takeConditions(opened).conditions;
  return {
    ...words,
    result,
    player: take.personName ?? 'no player',
    conditions: [
      ['Tempo', bpm === null ? '' : `${Math.round(bpm)} BPM`],
      ['Technique', take.technique],
      ['Pad', take.pad],
      ['Sticks', take.sticks],
      ['Device', take.device],
    ],
  };
}

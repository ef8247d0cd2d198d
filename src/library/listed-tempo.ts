import { likeTempo } from '../core/progress/conditions.ts';
import { tempoTold } from '../core/progress/tempo-told.ts';
import type { ListedTake } from './listed-takes.ts';

type Range = readonly [low: number, high: number];

interface ListedTempo {
  /** BPM, rounded to whole ones. */
  readonly bpm: Range;
  /** What was asked for, where a line was played at another tempo. */
  readonly asked: Range | null;
  /** Whether nothing was asked for, so that only the playing tells it. */
  readonly isOpen: boolean;
}

/**
 * The tempo that listings show of a take: the one asked for, or the one played where a line of it was played at another.
 * Null where nothing is known.
 *
 * @example listedTempo({ bpmLow: 80, bpmHigh: 80, bpmPlayed: 92.4, tempos: [{ asked: 80, played: 92.4 }] }) // { bpm: [92, 92], asked: [80, 80], isOpen: false }
 */
export function listedTempo({
  bpmLow,
  bpmHigh,
  bpmPlayed,
  tempos,
}: Pick<ListedTake, 'bpmLow' | 'bpmHigh' | 'bpmPlayed' | 'tempos'>): ListedTempo | null {
  if (bpmLow === null || bpmHigh === null)
    return bpmPlayed === null ? null : { bpm: whole(bpmPlayed, bpmPlayed), asked: null, isOpen: true };
  const asked = whole(bpmLow, bpmHigh);
  const isOff = tempos.some(
    (line) => line.asked !== null && tempoTold(line.asked, line.played) !== line.asked,
  );
  if (!isOff) return { bpm: asked, asked: null, isOpen: false };
  const played = tempos.flatMap((line) => (line.played === null ? [] : [line.played]));
  const [low, high] = [Math.min(...played), Math.max(...played)];
  // Lines played alike are one tempo.
  const bpm = bpmPlayed !== null && likeTempo(low, high) ? whole(bpmPlayed, bpmPlayed) : whole(low, high);
  return { bpm, asked, isOpen: false };
}

const whole = (low: number, high: number): Range => [Math.round(low), Math.round(high)];

import type { TakeResult } from '../../core/result/take-result.ts';
import { evenBeats } from '../listening/even-beats.ts';

/** What lets two takes be heard from the same place. */
export interface PairSound {
  /** Columns for beats that both takes have: where each begins, s, in the first and in the second. */
  readonly beats: readonly [readonly number[], readonly number[]];
  /** Mean power of the strokes, dB. */
  readonly loudnessDb: readonly [number, number];
}

/** Beats of both takes by their time through the line, in order, and how loud the strokes are. */
export function pairSound(first: TakeResult, second: TakeResult): PairSound {
  const keyed = (result: TakeResult) => {
    const { beats, goes } = evenBeats(result);
    const count = new Map<number, number>();
    return new Map(
      beats.map(({ from, go }) => {
        const beat = count.get(go) ?? 0;
        count.set(go, beat + 1);
        return [`${goes[go]}, ${beat}`, from] as const;
      }),
    );
  };
  const [a, b] = [keyed(first), keyed(second)];
  const shared = [...a.keys()].filter((key) => b.has(key));
  const loudness = ({ strokes: { levelDb } }: TakeResult) =>
    10 *
    Math.log10(levelDb.reduce((sum, level) => sum + 10 ** (level / 10), 0) / Math.max(1, levelDb.length));
  return {
    beats: [shared.map((key) => a.get(key)!), shared.map((key) => b.get(key)!)],
    loudnessDb: [loudness(first), loudness(second)],
  };
}

/**
 * The moment of the other take that is the same place in the music: the same beat and the same share of it; before the
 * first beat and after the last the same distance.
 *
 * @example likeMoment({ beats: [[1, 2], [5, 7]], loudnessDb: [0, 0] }, 0, 1.5) // 6
 */
export function likeMoment({ beats }: Pick<PairSound, 'beats'>, from: 0 | 1, time: number): number {
  const [own, other] = [beats[from], beats[1 - from]!];
  if (own.length === 0) return time;
  const after = own.findIndex((beat) => beat > time);
  const at = after === -1 ? own.length - 1 : after - 1;
  if (at < 0) return Math.max(0, other[0]! - (own[0]! - time));
  const [start, end] = [own[at]!, own[at + 1]];
  if (end === undefined) return other[at]! + time - start;
  return other[at]! + ((time - start) / (end - start)) * (other[at + 1]! - other[at]!);
}

/**
 * Volumes (0 … 1) at which both takes are equally loud: the louder one is turned down.
 *
 * @example pairVolumes({ loudnessDb: [-20, -26] }) // [0.501, 1]
 */
export function pairVolumes({ loudnessDb: [a, b] }: Pick<PairSound, 'loudnessDb'>): [number, number] {
  const quieter = Math.min(a, b);
  return [10 ** ((quieter - a) / 20), 10 ** ((quieter - b) / 20)];
}

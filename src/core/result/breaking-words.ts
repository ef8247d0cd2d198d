import { rounded } from './figures.ts';
import { dimensionName } from './names.ts';
import type { BreakingPoints } from './take-result.ts';

type BrokenDimension = BreakingPoints['dimensions'][number];

const tempo = (bpm: number) => rounded(bpm, 0);

/**
 * Where one dimension breaks, in few words.
 *
 * @example breakWords({ state: 'held', bpm: 140, low: 140, high: null, … }) // 'did not break up to 140'
 */
export function breakWords({ state, bpm }: BrokenDimension): string {
  if (state === 'broke') return `breaks at about ${tempo(bpm)}`;
  return state === 'held' ? `did not break up to ${tempo(bpm)}` : `already broken at ${tempo(bpm)}`;
}

/** Between which tempos it likely breaks, in few words. */
export function breakRange({ low, high, scores }: BrokenDimension): string {
  const slowest = tempo(scores[0]!.bpm);
  const fastest = tempo(scores.at(-1)!.bpm);
  if (low === null && high === null) return "this take can't tell where";
  if (low === null) return `likely below ${tempo(high!)}, and it may be below ${slowest}`;
  if (high !== null) return `likely between ${tempo(low)} and ${tempo(high)}`;
  return low === scores.at(-1)!.bpm
    ? `surely beyond ${fastest}`
    : `likely above ${tempo(low)}, and it may be beyond ${fastest}`;
}

/** How far the take got. */
export function stopWords({ lines, played, stoppedAt }: BreakingPoints): string {
  if (stoppedAt !== null) return `The take stops in the line at ${tempo(stoppedAt)} BPM.`;
  return played < lines.length
    ? `The take ends after ${played} of ${lines.length} tempos.`
    : `All ${lines.length} tempos were played.`;
}

/**
 * The dimension that likely breaks first: the one that breaks at the slowest tempo; null where all held.
 *
 * @example firstToBreak(breaking)?.id // 'evenness'
 */
export function firstToBreak({ dimensions }: BreakingPoints): BrokenDimension | null {
  const broken = dimensions.filter(({ state }) => state !== 'held');
  return broken.toSorted((a, b) => a.bpm - b.bpm)[0] ?? null;
}

/** Which dimension gives way first and where, in one sentence. */
export function firstBreakWords(breaking: BreakingPoints): string {
  if (breaking.dimensions.length === 0) return 'Too few tempos were played to tell where it breaks.';
  const first = firstToBreak(breaking);
  const { lines, played, stoppedAt, dimensions } = breaking;
  if (first === null && stoppedAt !== null) {
    const held = Math.min(...dimensions.map(({ bpm }) => bpm));
    return `Nothing broke up to ${tempo(held)} BPM; the take breaks off at ${tempo(stoppedAt)}.`;
  }
  if (first === null)
    return played < lines.length
      ? `Nothing broke in the ${played} of ${lines.length} tempos that were played.`
      : 'Nothing broke in this take.';
  return `${dimensionName(first.id)} gives way first: ${breakWords(first)} BPM.`;
}

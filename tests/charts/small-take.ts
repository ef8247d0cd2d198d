import type { TakeResult } from '../../src/core/result/take-result.ts';
import { exampleResult } from '../support/example-result.ts';

/** Deviations and levels that repeat every beat, so that every middle is known by construction. */
export const deviations = [0, -6, 4] as const;
export const levelsDb = [-12, -24, -22] as const;

/** A score with its interval 5 to either side. */
const score = (value: number) => ({
  score: value,
  low: value - 5,
  high: value + 5,
  word: value >= 85 ? ('secure' as const) : value >= 60 ? ('nearly' as const) : ('not-yet' as const),
});

/**
 * A take of `beats` triplets of which nothing is left to chance: accent on partial 1, hands in turn, 0.2 s from
 * stroke to stroke, each partial always the same way off and always the same level. Two dimensions are scored.
 */
export function smallTake(beats: number, changes: Partial<TakeResult> = {}): TakeResult {
  const index = Array.from({ length: beats * 3 }, (_, i) => i);
  const hand = index.map((i): 'R' | 'L' => (i % 2 === 0 ? 'R' : 'L'));
  const zeros = index.map(() => 0);
  const time = index.map((i) => 1 + 0.2 * i + deviations[i % 3]! / 1000);
  const example = exampleResult();
  return {
    ...example,
    sheet: { title: 'Small', lines: [{ ...example.sheet.lines[0]!, repeats: 1, bpm: 100, beatsInBar: 4 }] },
    strokes: {
      time,
      timeSe: index.map(() => 0.0002),
      levelDb: index.map((i) => levelsDb[i % 3]!),
      levelSe: index.map(() => 0.1),
      role: index.map(() => 'matched' as const),
      slot: index,
      hand,
      deviationMs: index.map((i) => deviations[i % 3]!),
    },
    slots: {
      line: zeros,
      repeat: zeros,
      bar: index.map((i) => Math.floor(i / 12)),
      beat: index.map((i) => Math.floor(i / 3)),
      partial: index.map((i) => (i % 3) + 1),
      divisions: index.map(() => 3),
      hand,
      accent: index.map((i) => i % 3 === 0),
      grace: index.map(() => false),
      buzz: index.map(() => false),
      position: index.map((i) => i / 3),
      stroke: index,
      state: index.map(() => 'played' as const),
    },
    segments: [
      {
        firstSlot: 0,
        lastSlot: index.length - 1,
        state: 'graded',
        leadSwapped: false,
        from: time[0]!,
        to: time.at(-1)!,
        bpm: 100,
      },
    ],
    tempo: { time: [1, 2, 3], bpm: [99, 100, 102], segment: [0, 0, 0] },
    scores: {
      rubric: 'steady',
      overall: score(70),
      dimensions: [
        { id: 'evenness', score: score(90), measures: [] },
        { id: 'dynamics', score: score(50), measures: [] },
      ],
    },
    ...changes,
  };
}

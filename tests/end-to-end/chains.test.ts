import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { mostChange, mostPoints } from '../bench/chains-report.ts';
import { type Comparison, compareResults, movedBy } from '../bench/compare-results.ts';
import { gradedThrough, gradingChains } from '../bench/grading-chains.ts';
import type { RecordingChain } from '../bench/recording-chains.ts';
import { describeProgram } from '../programs.ts';

const seeds = [1, 2, 3];
const [clean, ...others] = gradingChains;
const cleanResults = new Map<number, TakeResult>();
function cleanResult(seed: number): TakeResult {
  const known = cleanResults.get(seed);
  if (known) return known;
  const result = gradedThrough(clean!, seed, undefined)!;
  cleanResults.set(seed, result);
  return result;
}

const compared = (chain: RecordingChain, taken: readonly number[], ffmpeg?: string): Comparison[] =>
  taken.map((seed) => compareResults(cleanResult(seed), gradedThrough(chain, seed, ffmpeg)!));

describe('a clean recording', () => {
  it.each(seeds)(
    'is scored in every dimension, and refuses nothing but what the exercise hides: seed %i',
    (seed) => {
      const { scores, measures, slots } = cleanResult(seed);
      expect(scores!.dimensions).toHaveLength(6);
      expect(measures.filter(({ outcome }) => outcome.state === 'not-measurable')).toEqual([]);
      expect(slots.state.every((state) => state === 'played')).toBe(true);
    },
  );
});

describe.each(others.filter(({ codec }) => codec === undefined))(
  'the same playing through $name',
  (chain) => {
    const all = compared(chain, seeds);

    it('is graded and has every stroke', () => {
      expect(all.map(({ gradable, lost, gained }) => [gradable, lost, gained])).toEqual(
        seeds.map(() => [true, 0, 0]),
      );
    });

    it('has the same scores to three points, overall and in each dimension', () => {
      for (const id of Object.keys(all[0]!.points)) {
        expect(mostChange(all, id), id).toBeLessThanOrEqual(mostPoints);
      }
    });

    it('has its figures inside the intervals of the clean recording', () => {
      const figures = all.flatMap((one) => one.figures);
      expect(figures.length).toBeGreaterThan(40 * seeds.length);
      // At the edge of a test for slips a figure may jump: one in a hundred.
      const outside = figures.filter((pair) => Math.abs(movedBy(pair)) > 1);
      expect(outside.length / figures.length, JSON.stringify(outside)).toBeLessThanOrEqual(0.01);
    });

    it('refuses no figure that the clean recording gives', () => {
      expect(all.flatMap((one) => one.refused)).toEqual([]);
    });
  },
);

describeProgram('ffmpeg', 'the same playing through a lossy codec', (ffmpeg) => {
  it.each(others.filter(({ codec }) => codec !== undefined))(
    'keeps the scores of timing and of strokes there to three points, and refuses nothing: $name',
    (chain) => {
      const all = compared(chain, [1, 2], ffmpeg);
      for (const id of ['evenness', 'shape', 'steadiness', 'completeness']) {
        expect(mostChange(all, id), id).toBeLessThanOrEqual(mostPoints);
      }
      expect(all.every(({ gradable }) => gradable)).toBe(true);
      // A part has six accents here, the fewest it takes; the encoder, which rounds by processor, may spoil one of them.
      const fewest = /^Accent furthest off \{"partial":\d,"hand":"."\}: too-few-strokes$/;
      const refused = all.flatMap((one) => one.refused);
      expect(refused.filter((name) => !fewest.test(name))).toEqual([]);
      expect(refused.length).toBeLessThanOrEqual(1);
    },
  );
});

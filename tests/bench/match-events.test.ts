import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeOutside } from '../outside.ts';
import { agreement, matchEvents } from './match-events.ts';

const score = (reference: readonly number[], estimates: readonly number[], window: number) =>
  agreement(matchEvents(reference, estimates, window).length, reference.length, estimates.length);

/** Size of a maximum matching by augmenting paths, which needs no order. */
function mostPairs(reference: readonly number[], estimates: readonly number[], window: number): number {
  const owner = new Map<number, number>();
  const augment = (r: number, seen: Set<number>): boolean => {
    const time = reference[r]!;
    return estimates.some((estimate, e) => {
      if (estimate < time - window || estimate > time + window || seen.has(e)) return false;
      seen.add(e);
      const other = owner.get(e);
      if (other !== undefined && !augment(other, seen)) return false;
      owner.set(e, r);
      return true;
    });
  };
  return reference.filter((_, r) => augment(r, new Set())).length;
}

const times = fc
  .array(fc.integer({ min: 0, max: 400 }), { maxLength: 25 })
  .map((list) => list.sort((a, b) => a - b).map((n) => n / 1000));

describe('matchEvents', () => {
  it('gives the pairs of the worked example in mir_eval (tests/test_util.py, MIT)', () => {
    const pairs = matchEvents([1, 2, 3], [1.1, 1.9, 5, 6, 10], 0.5);
    expect(pairs).toEqual([
      { reference: 0, estimate: 0 },
      { reference: 1, estimate: 1 },
    ]);
  });

  it('finds as many pairs as any matching can', () => {
    fc.assert(
      fc.property(times, times, fc.integer({ min: 0, max: 60 }), (reference, estimates, ms) => {
        const pairs = matchEvents(reference, estimates, ms / 1000);
        expect(pairs.length).toBe(mostPairs(reference, estimates, ms / 1000));
        expect(new Set(pairs.map((pair) => pair.reference)).size).toBe(pairs.length);
        expect(new Set(pairs.map((pair) => pair.estimate)).size).toBe(pairs.length);
        for (const pair of pairs) {
          const apart = Math.abs(reference[pair.reference]! - estimates[pair.estimate]!);
          expect(apart).toBeLessThanOrEqual(ms / 1000 + 1e-12);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('takes the closer of two estimates', () => {
    expect(matchEvents([1], [0.992, 1.001], 0.01)).toEqual([{ reference: 0, estimate: 1 }]);
    expect(matchEvents([1, 1.02], [0.992, 1.001, 1.0195], 0.01).map((pair) => pair.estimate)).toEqual([1, 2]);
  });
});

interface OnsetCase {
  readonly name: string;
  readonly ref: readonly number[];
  readonly est: readonly number[];
  readonly window: number;
  readonly F: number;
  readonly P: number;
  readonly R: number;
  readonly n_match: number;
}

describeOutside('cases computed with mir_eval 0.7', ['onset_eval/mir_eval_onset_vectors.json'], (folder) => {
  const text = readFileSync(join(folder, 'onset_eval/mir_eval_onset_vectors.json'), 'utf8');
  const { cases } = JSON.parse(text) as { cases: OnsetCase[] };
  it('are fifteen', () => expect(cases).toHaveLength(15));
  it.each(cases)('$name at $window s', ({ ref, est, window, F, P, R, n_match }) => {
    expect(matchEvents(ref, est, window)).toHaveLength(n_match);
    const { f, precision, recall } = score(ref, est, window);
    expect(f).toBeCloseTo(F, 12);
    expect(precision).toBeCloseTo(P, 12);
    expect(recall).toBeCloseTo(R, 12);
  });
});

const fixtures = Array.from({ length: 10 }, (_, i) => String(i).padStart(2, '0'));
describeOutside(
  'fixtures of mir_eval at 50 ms (tests/data/onset, MIT)',
  fixtures.flatMap((n) => ['ref', 'est'].map((list) => `mir_eval_onset/${list}${n}.txt`)),
  (folder) => {
    const read = (name: string) => readFileSync(join(folder, 'mir_eval_onset', name), 'utf8');
    const list = (name: string) => read(name).replace(/#.*/g, '').split(/\s+/).filter(Boolean).map(Number);
    it.each(fixtures)('%s', (n) => {
      const wanted = JSON.parse(read(`output${n}.json`)) as Record<string, number>;
      const { f, precision, recall } = score(list(`ref${n}.txt`), list(`est${n}.txt`), 0.05);
      expect(f).toBeCloseTo(wanted['F-measure']!, 12);
      expect(precision).toBeCloseTo(wanted.Precision!, 12);
      expect(recall).toBeCloseTo(wanted.Recall!, 12);
    });
  },
);

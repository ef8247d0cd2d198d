import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { gradeTake } from '../../src/core/grade-take.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { openedSample } from '../support/opened-sample.ts';

const root = join(import.meta.dirname, '../..');

/** A golden file: what was written by an earlier run of this program, for readers of the project; not a truth. */
const kept = validateTakeResult(
  JSON.parse(readFileSync(join(root, 'reports/samples/demo.json'), 'utf8')) as unknown,
);

function gradedAgain() {
  const { source, sheet } = openedSample('demo');
  return gradeTake(source, sheet, { name: 'demo.wav' });
}

describe('the sample result of the demo take', () => {
  const again = gradedAgain();

  it('holds the strokes that are found today', () => {
    expect(again.strokes.time).toHaveLength(kept.strokes.time.length);
    again.strokes.time.forEach((time, i) => {
      expect(Math.abs(time - kept.strokes.time[i]!)).toBeLessThan(1e-5);
      expect(Math.abs(again.strokes.levelDb[i]! - kept.strokes.levelDb[i]!)).toBeLessThan(0.01);
    });
    expect(again.strokes.slot).toEqual(kept.strokes.slot);
    expect(again.strokes.role).toEqual(kept.strokes.role);
  });

  it('holds the measures, scores and advice that come of them', () => {
    expect(again.measures.map(({ id, scope }) => ({ id, scope }))).toEqual(
      kept.measures.map(({ id, scope }) => ({ id, scope })),
    );
    again.measures.forEach(({ id, outcome }, i) => {
      const before = kept.measures[i]!.outcome;
      expect(outcome.state, id).toBe(before.state);
      if (outcome.state !== 'measured' || before.state !== 'measured') return;
      const close = 0.01 * Math.max(1, before.high - before.low);
      for (const key of ['value', 'low', 'high'] as const) {
        expect(Math.abs(outcome[key] - before[key]), `${id} ${key}`).toBeLessThan(close);
      }
    });
    expect(Math.abs(again.scores!.overall.score - kept.scores!.overall.score)).toBeLessThan(0.1);
    expect(again.advice.map(({ code }) => code)).toEqual(kept.advice.map(({ code }) => code));
  });
});

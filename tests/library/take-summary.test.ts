import { expect, it } from 'vitest';
import { lineTempos } from '../../src/library/line-tempos.ts';
import { takeSummary } from '../../src/library/take-summary.ts';
import { exampleResult } from '../support/example-result.ts';

const result = exampleResult();

it('a listing sees the figures of the whole take', () => {
  const { strokes, scores, recording } = result;
  const right = strokes.hand.filter((hand) => hand === 'R').length;
  expect(takeSummary(result)).toMatchObject({
    duration: recording.duration,
    bpmLow: 100,
    bpmHigh: 100,
    graded: 1,
    rubric: 'steady',
    score: scores!.overall.score,
    scoreWord: scores!.overall.word,
    timingSpreadMs: 11.6,
    timingSpreadShare: 5.8,
    ratioDb: 9.2,
    strokesRight: right,
    strokesLeft: strokes.hand.length - right - 1,
    strokesOther: 1,
    missed: 1,
    endGaveWay: 0,
  });
  const fades = { ...result.advice[0]!, code: 'fades-at-the-end' };
  expect(takeSummary({ ...result, advice: [...result.advice, fades] }).endGaveWay).toBe(1);
});

it('says nothing of what is not there', () => {
  const reason = { code: 'silent', facts: {} };
  const lines = result.sheet.lines.map((line) => ({ ...line, bpm: null }));
  const empty = exampleResult({
    grading: { state: 'not-gradable', reason },
    scores: null,
    measures: [],
    sheet: { title: '', lines },
    tempo: { time: [], bpm: [], segment: [] },
  });
  expect(takeSummary(empty)).toMatchObject({
    graded: 0,
    score: null,
    scoreWord: null,
    dimensions: '[]',
    bpmLow: null,
    bpmHigh: null,
    bpmPlayed: null,
    timingSpreadMs: null,
  });
  expect(lineTempos(empty)).toEqual([null, null]);
});

it('each line has the tempo at which it was played', () => {
  // The example's tempo rises by 0.06 BPM a beat from 99.9: 12 beats a line.
  const [first, second] = lineTempos(result);
  expect(first).toBeCloseTo(99.9 + 0.06 * 5.5, 1);
  expect(second).toBeCloseTo(99.9 + 0.06 * 17.5, 1);
});

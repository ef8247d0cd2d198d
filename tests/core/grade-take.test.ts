import { describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { advanced } from '../../src/core/scoring/rubrics/advanced.ts';
import { isTempoAdvice } from '../../src/core/scoring/tempo-advice.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { openedSample } from '../support/opened-sample.ts';

function sheetOf(text: string): Sheet {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
  return parsed.sheet;
}

const asked = sheetOf('title: Monday\ntempo: 144\n>RLR >LRL ; times: 9');

function sourceOf(channels: readonly Float32Array[], sampleRate = 22050): Source {
  return {
    sampleRate,
    channels: channels.length,
    length: channels[0]!.length,
    read(channel, from, to) {
      const samples = new Float32Array(Math.max(0, to - from));
      const first = Math.max(0, from);
      if (first < to) samples.set(channels[channel]!.subarray(first, to), first - from);
      return samples;
    },
  };
}

function samplesOf(name: string): Float32Array {
  const { source } = openedSample(name);
  return source.read(0, 0, source.length);
}

/** Noise of a fixed seed, as the minimal standard generator gives it (Park & Miller 1988). */
function hiss(length: number): Float32Array {
  let state = 1;
  return Float32Array.from({ length }, () => {
    state = (state * 48271) % 2147483647;
    return 0.03 * (state / 2147483647 - 0.5);
  });
}

const take = samplesOf('accent-one');
const graded = gradeTake(sourceOf([take]), asked, { name: 'monday.wav', sha256: 'ab12' });

describe('gradeTake', () => {
  it('gives the example of its comment', () => {
    expect(graded.grading).toEqual({ state: 'graded' });
    expect(graded.recording).toMatchObject({
      name: 'monday.wav',
      sha256: 'ab12',
      sampleRate: 22050,
      channels: 1,
    });
    expect(graded.recording.duration).toBeCloseTo(take.length / 22050, 9);
    expect(graded.sheet).toMatchObject({
      title: 'Monday',
      lines: [{ notation: '>RLR >LRL', repeats: 9, bpm: 144 }],
    });
  });

  it('gives the same result each time', () => {
    expect(gradeTake(sourceOf([take]), asked, { name: 'monday.wav', sha256: 'ab12' })).toEqual(graded);
  });

  it('has columns of equal length that refer to each other', () => {
    const { strokes, slots } = graded;
    for (const column of Object.values(strokes)) expect(column).toHaveLength(strokes.time.length);
    for (const column of Object.values(slots)) expect(column).toHaveLength(slots.line.length);
    slots.stroke.forEach((stroke, slot) => {
      expect(slots.state[slot] === 'played').toBe(stroke !== null);
      if (stroke !== null) expect(strokes.slot[stroke]).toBe(slot);
    });
  });

  it('hears the same in two equal channels as in one', () => {
    const stereo = gradeTake(sourceOf([take, take]), asked);
    expect(stereo.recording.channels).toBe(2);
    expect(stereo.measures).toEqual(graded.measures);
  });

  it('gives the same grade to a take recorded at half the loudness', () => {
    const quiet = gradeTake(sourceOf([take.map((sample) => sample / 2)]), asked);
    expect(quiet.strokes.slot).toEqual(graded.strokes.slot);
    quiet.strokes.levelDb.forEach((level, i) => {
      expect(level - graded.strokes.levelDb[i]!).toBeCloseTo(20 * Math.log10(0.5), 1);
    });
    expect(quiet.scores!.overall.score).toBeCloseTo(graded.scores!.overall.score, 0);
  });

  it('gives the same strokes, later, when silence stands before the take', () => {
    const delay = 11025;
    const later = new Float32Array(take.length + delay);
    later.set(take, delay);
    const result = gradeTake(sourceOf([later]), asked);
    expect(result.strokes.slot).toEqual(graded.strokes.slot);
    result.strokes.time.forEach((time, i) => {
      expect(time - graded.strokes.time[i]!).toBeCloseTo(delay / 22050, 4);
    });
  });

  it('scores by the rubric it is given', () => {
    const strict = gradeTake(sourceOf([take]), asked, { rubric: advanced });
    expect(strict.scores!.rubric).toBe(advanced.id);
    expect(strict.scores!.overall.score).toBeLessThan(graded.scores!.overall.score);
    expect(strict.measures).toEqual(graded.measures);
  });

  it('gives no tempo after discomfort', () => {
    const advice = gradeTake(sourceOf([take]), asked, { discomfort: true }).advice.filter(({ code }) =>
      isTempoAdvice(code),
    );
    expect(advice.map(({ code }) => code)).toEqual(['tempo-waits-for-discomfort']);
  });

  it('passes on what is known of the recording, graded or not', () => {
    const warnings = [{ code: 'end-missing', facts: { missingSeconds: 1.5 } }];
    expect(gradeTake(sourceOf([take]), asked, { warnings }).warnings).toContainEqual(warnings[0]);
    expect(gradeTake(sourceOf([new Float32Array(100)]), asked, { warnings }).warnings).toEqual(warnings);
  });

  it.each([
    ['no samples', new Float32Array(0), 'silent-take'],
    ['digital silence', new Float32Array(22050), 'silent-take'],
    ['a hiss', hiss(66150), 'no-strokes-heard'],
    ['its first stroke alone', take.subarray(0, Math.round(0.5 * 22050)), 'too-few-strokes-heard'],
  ])('does not grade %s, says why, and stays valid as a document', (_, samples, code) => {
    const result = gradeTake(sourceOf([samples]), asked);
    expect(result.grading).toMatchObject({ state: 'not-gradable', reason: { code } });
    expect(result).toMatchObject({ measures: [], scores: null, advice: [] });
    expect(() => validateTakeResult(JSON.parse(JSON.stringify(result)))).not.toThrow();
  });

  it('does not grade another exercise than the one that was played', () => {
    const other = sheetOf('tempo: 144\nRRRR LL-- RL-R L-L- ; times: 12');
    const { grading, scores, warnings } = gradeTake(sourceOf([take]), other);
    expect(grading.state === 'not-gradable' || warnings.length > 0).toBe(true);
    if (grading.state === 'graded' && scores) expect(scores.overall.word).not.toBe('secure');
  });
});

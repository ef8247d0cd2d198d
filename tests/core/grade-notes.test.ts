import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { gradeNotes } from '../../src/core/grade-notes.ts';
import type { PlayedClick } from '../../src/core/grading/click-to-hold-against.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { measuredOutcome } from '../../src/core/scoring/find-measure.ts';
import { midiNotes } from '../../src/formats/midi-notes.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';

const root = join(import.meta.dirname, '../..');
const demo = JSON.parse(readFileSync(join(root, 'reports/samples/demo.json'), 'utf8')) as TakeResult;
const sheetText = readFileSync(join(root, 'fixtures/takes/demo.sheet'), 'utf8');

describe('gradeNotes', () => {
  it('grades a take that was saved as MIDI as its recording was graded, to the steps of the file', () => {
    const parsed = parseSheet(sheetText);
    const notes = midiNotes(takeMidi(demo)!);
    if (!parsed.ok || !notes.ok) throw new Error('unreadable');
    const result = gradeNotes(notes, parsed.sheet, { name: 'demo.mid' });
    expect(validateTakeResult(result)).toBe(result);
    expect(result.recording).toMatchObject({ levels: 'velocity', name: 'demo.mid' });
    expect(result.grading).toEqual({ state: 'graded' });
    const of = (take: TakeResult, id: string) => measuredOutcome(take.measures, id)!;
    expect(of(result, 'missed').value).toBe(of(demo, 'missed').value);
    // A step of 480 a beat at 100 BPM is 1.25 ms, of which half at most is lost.
    expect(of(result, 'timing-spread').value).toBeCloseTo(of(demo, 'timing-spread').value, 0);
    expect(of(result, 'tempo-error').value).toBeCloseTo(of(demo, 'tempo-error').value, 1);
    expect(result.reference.kind).not.toBe('heard-click');
    expect(result.measures.find(({ id }) => id === 'offset')!.outcome.state).not.toBe('measured');
  });
});

describe('a take played to a click with silent bars', () => {
  const parsed = parseSheet('tempo: 120\n>RLR >LRL >RLR >LRL; x12\n');
  if (!parsed.ok) throw new Error('no sheet');
  const { sheet } = parsed;
  // Bars of two seconds: two that sound, one that doesn't, and in that each beat comes 4 ms later.
  const silent = (bar: number) => bar % 3 === 2;
  const late = (stroke: number) => {
    const bar = Math.floor(stroke / 12);
    return silent(bar) ? ((stroke - 12 * bar) / 3) * 0.004 : 0;
  };
  const notes = Array.from({ length: 144 }, (_, i) => ({
    time: 1 + i / 6 + late(i),
    step: 1e-6,
    key: 38,
    velocity: i % 3 === 0 ? 120 : 50,
  }));
  const times = Array.from({ length: 48 }, (_, i) => 1 + i / 2);
  const audible = times.map((_, i) => !silent(Math.floor(i / 4)));
  const wander = (playedClick: PlayedClick) =>
    gradeNotes({ notes, duration: 26 }, sheet, { playedClick }).measures.find(
      ({ id }) => id === 'silent-wander',
    )!.outcome;

  it.each([true, false])('says how the beat moved in them, delay measured: %s', (calibrated) => {
    expect(wander({ times, audible, calibrated, uncertaintyMs: 1 })).toMatchObject({
      state: 'measured',
      value: expect.closeTo(4, 6),
      strokes: 48,
    });
  });

  it('says nothing of it where every click sounded', () => {
    expect(wander({ times, calibrated: true, uncertaintyMs: 1 })).toMatchObject({
      state: 'not-applicable',
      reason: { code: 'click-never-silent' },
    });
  });
});

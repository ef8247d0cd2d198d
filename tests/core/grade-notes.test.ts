import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { gradeNotes } from '../../src/core/grade-notes.ts';
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

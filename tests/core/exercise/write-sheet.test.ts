import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestBar } from '../../../src/core/exercise/bars.ts';
import { listExercises } from '../../../src/core/exercise/catalogue.ts';
import { exerciseId } from '../../../src/core/exercise/exercise-id.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import type { Sheet, SheetLine } from '../../../src/core/exercise/sheet.ts';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { writeSheet } from '../../../src/core/exercise/write-sheet.ts';
import { anyBeats } from './beats-arbitrary.ts';

const name = fc
  .string({
    unit: fc.constantFrom('a', 'É', '#', ';', '"', ':', ' ', '|', '鼓', '🥁'),
    minLength: 1,
    maxLength: 30,
  })
  .map((text) => text.replace(/ +/g, ' ').trim());

const beats = fc.oneof(anyBeats, fc.constantFrom(...listExercises().map((exercise) => exercise.beats)));

const line: fc.Arbitrary<SheetLine> = fc
  .record({
    beats,
    label: name.filter((text) => text !== ''),
    repeats: fc.integer({ min: 1, max: 20 }),
    bpm: fc.option(fc.integer({ min: 20, max: 800 }).map((half) => half / 2)),
    beatsInBar: fc.integer({ min: 1, max: 16 }),
    restBeats: fc.integer({ min: 0, max: 256 }),
    leadChange: fc.boolean(),
    ratioBand: fc.option(
      fc.record({ minDb: fc.integer({ min: 0, max: 20 }), maxDb: fc.integer({ min: 21, max: 60 }) }),
    ),
  })
  .map((made) => ({
    ...made,
    bpm: made.bpm === null ? null : Math.max(10, made.bpm),
    beatsInBar: Math.max(made.beatsInBar, longestBar(made.beats) ?? 1),
    id: exerciseId(made.beats),
    notation: writeNotation(made.beats),
  }));

const assigned = fc
  .record({
    player: name,
    due: fc.option(fc.constantFrom('2026-03-16', '2028-02-29')),
    note: name,
  })
  .filter(({ player, due, note }) => player !== '' || due !== null || note !== '');

const anySheet: fc.Arbitrary<Sheet> = fc
  .record({
    title: name,
    lines: fc.array(line, { minLength: 1, maxLength: 6 }),
    assigned: fc.option(assigned),
  })
  .map(({ assigned, ...sheet }) => (assigned === null ? sheet : { ...sheet, assigned }));

describe('writeSheet', () => {
  it('writes the example of its comment', () => {
    const parsed = parseSheet('title: Off the beat\nRL>R LR>L ; tempo: 110 ; x8');
    expect(parsed.ok && writeSheet(parsed.sheet)).toBe(
      'title: Off the beat\ntempo: 110\ntimes: 8\n\nRL>R LR>L\n',
    );
  });

  it('is read back as the same sheet', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        expect(parseSheet(writeSheet(sheet))).toEqual({ ok: true, sheet });
      }),
    );
  });

  it('flattens names that would break out of their line', () => {
    const parsed = parseSheet('R');
    if (!parsed.ok) throw new Error('not read');
    const written = writeSheet({
      title: 'a\ntempo: 90',
      lines: [{ ...parsed.sheet.lines[0]!, label: 'b\n\u0000c' }],
    });
    expect(written).toBe('title: a tempo: 90\n\nR ; name: b c\n');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notationColumns } from '../../../src/core/exercise/notation-columns.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';
import { anyBeats } from './beats-arbitrary.ts';

function columns(notation: string, beatsInBar = 4): string {
  const parsed = parseNotation(notation);
  return parsed.ok ? notationColumns(parsed.beats, beatsInBar) : parsed.fault.code;
}

describe('notationColumns', () => {
  it('shows the example of its comment', () => {
    expect(columns('>RLR >LRL')).toBe(
      [
        'count    1  trip  let   2  trip  let',
        'accents  >              >',
        'hands    R  L     R     L  R     L',
      ].join('\n'),
    );
  });

  it('shows rests, grace notes and buzzes, and a block for each bar', () => {
    expect(columns('l>R-LzR RL | RLRLR')).toBe(
      [
        'count    1   e  &   a   2  &',
        'accents  >',
        'hands    lR  -  Lz  R   R  L',
        '',
        'count    1  .  .  .  .',
        'accents',
        'hands    R  L  R  L  R',
      ].join('\n'),
    );
    expect(columns('R L R', 2).split('\n\n')).toHaveLength(2);
  });

  it('shows every hand and every accent, each accent above its hand', () => {
    fc.assert(
      fc.property(anyBeats, (beats) => {
        const rows = notationColumns(beats, 4).split('\n');
        const notes = beats.flatMap((beat) => beat.partials).filter((note) => note !== null);
        const text = (start: string) =>
          rows
            .filter((row) => row.startsWith(start))
            .map((row) => row.slice(9))
            .join(' ');
        expect(text('hands').match(/[RL]/g)).toEqual(notes.map((note) => note.hand));
        expect(text('accents').match(/>/g) ?? []).toHaveLength(notes.filter((note) => note.accent).length);
        rows.forEach((row, index) => {
          if (!row.startsWith('accents')) return;
          for (const { index: at } of row.matchAll(/>/g)) expect(rows[index + 1]![at]).toMatch(/[RLrl]/);
        });
      }),
    );
  });
});

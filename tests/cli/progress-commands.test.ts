import { describe, expect, it } from 'vitest';
import { guessTruth } from '../../src/core/progress/guess-truth.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { keepGuess } from '../../src/library/guess.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import type { FolderLibrary } from '../../src/library/open-folder-library.ts';
import { addPerson } from '../../src/library/people.ts';
import { writeDiscomfort } from '../../src/library/practice.ts';
import { readTake } from '../../src/library/read-take.ts';
import { madeTake } from '../library/made-take.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { exampleResult } from '../support/example-result.ts';
import { runProgram } from './built-program.ts';

const personId = '6f9619ff-8b86-4d01-b42d-00cf4fc964ff';

/** A take of one line whose timing spread is `spreadMs`. */
function played(spreadMs: number): Partial<TakeResult> {
  const { sheet, slots, measures } = exampleResult();
  return {
    sheet: { ...sheet, lines: sheet.lines.slice(0, 1) },
    slots: { ...slots, line: slots.line.map(() => 0) },
    measures: measures
      .filter(({ scope }) => (scope.line ?? 0) === 0)
      .map((one) =>
        one.id.startsWith('timing-spread') && one.outcome.state === 'measured'
          ? {
              ...one,
              outcome: { ...one.outcome, value: spreadMs, low: spreadMs * 0.8, high: spreadMs * 1.3 },
            }
          : one,
      ),
  };
}

/** Weeks of takes, two a day on every seventh day. */
async function keepWeeks(library: FolderLibrary, spreads: readonly number[]) {
  await addPerson(library.db, { id: personId, name: 'Mirelle', role: 'student', note: '', createdAt: 0 });
  for (const [week, spread] of spreads.entries())
    for (const again of [0, 1]) {
      const { recordedAt, day } = madeTake(7 * week);
      const details = { pad: 'gum pad', sticks: 'hickory', device: 'phone' };
      const other = { personId, recordedAt: recordedAt + again, day, details };
      await keepTake(library, madeTake(1000 + 2 * week + again, other, played(spread + again * 0.2)));
    }
}

const falling = [9, 8.7, 8.1, 7.9, 7.2, 6.9, 6.1, 6];

describe('evenhand progress', () => {
  it('tells a trend over days, by how much a week, the cleanest takes and the next tempo', () =>
    withLibrary(async (library) => {
      await keepWeeks(library, falling);
      const { stdout, status } = runProgram(['progress', '--player', 'Mirelle', '--library', library.folder]);
      expect(status).toBe(0);
      expect(stdout).toContain('16 times on 8 days');
      expect(stdout).toMatch(/Timing spread +6\.1 ms +−6 % +\(−\d %.* to −\d %\) +getting clearer/);
      expect(stdout).toMatch(/Accents above taps .*no clear trend/);
      expect(stdout).toContain('Cleanest takes: ');
      expect(stdout).toMatch(/Next: /);
      const { exercises } = JSON.parse(
        runProgram(['progress', '--player', 'Mirelle', '--json', '--library', library.folder]).stdout,
      );
      expect(exercises[0].progress.figures[0].days).toHaveLength(8);
      expect(exercises[0].progress.figures[0].days[0]).toMatchObject({ day: '2026-03-09', takes: 2 });
    }));

  it('has no trend in four days, and no tempo for a player who noted discomfort', () =>
    withLibrary(async (library) => {
      await keepWeeks(library, falling.slice(0, 4));
      const day = new Date().toISOString().slice(0, 10);
      await writeDiscomfort(library.db, { id: 'a', personId, day, text: 'wrist' });
      const { stdout } = runProgram(['progress', '--player', 'Mirelle', '--library', library.folder]);
      expect(stdout).toMatch(/Timing spread .*1 more day needed/);
      expect(stdout).toContain('You noted discomfort');
    }));
});

describe('evenhand progress of a player who guessed', () => {
  it('says how often the guesses were right, from how many, and what chance would hit', () =>
    withLibrary(async (library) => {
      await keepWeeks(library, falling);
      const { takes } = await listTakes(library.db, { limit: 12 });
      for (const { id, result } of await Promise.all(
        takes.map(({ id }) => readTake(library.db, id).then(({ result }) => ({ id, result }))),
      )) {
        const { tempo } = guessTruth(result);
        await keepGuess(library.db, {
          takeId: id,
          guess: { guessedAt: 1, worstLine: null, tempo: tempo ?? 'held', taps: 'low' },
        });
      }
      const asked = ['progress', '--player', 'Mirelle', '--library', library.folder];
      const { guesses } = JSON.parse(runProgram([...asked, '--json']).stdout);
      expect(guesses.length).toBeGreaterThan(0);
      const { stdout } = runProgram(asked);
      expect(stdout).toContain('How well the guesses fit');
      for (const record of guesses) {
        expect(record.guesses).toBe(12);
        expect(stdout.replace(/\s+/g, ' ')).toContain(`right in ${record.right} of 12 guesses`);
      }
      expect(runProgram([...asked, '--report', '-']).stdout).toContain('<section id="guesses">');
    }));
});

describe('evenhand compare', () => {
  it('gives a verdict on days, once there are three on each side', () =>
    withLibrary(async (library) => {
      await keepWeeks(library, falling);
      const { id } = exampleResult().sheet.lines[0]!;
      const days = (from: string) =>
        runProgram([
          'compare',
          '--player',
          'Mirelle',
          '--exercise',
          id,
          '--from',
          from,
          '--library',
          library.folder,
        ]);
      const { stdout } = days('2026-04-06');
      expect(stdout).toContain('4 days before, 4 from then on');
      expect(stdout).toMatch(/Timing spread +8\.\d ms +6\.\d ms +−\d+ % .* clearer$/m);
      expect(stdout).toMatch(/Accents above taps .* no clear change$/m);
      expect(days('2026-03-17').stdout).toMatch(/^A verdict needs 3 days on each side; there are 2/m);
    }));

  it('shows two takes without a verdict', () =>
    withLibrary(async (library) => {
      await keepWeeks(library, [9, 6]);
      const takes = JSON.parse(
        runProgram(['takes', '--json', '--order', 'oldest', '--library', library.folder]).stdout,
      );
      const { stdout } = runProgram(['compare', takes[0].id, takes[3].id, '--library', library.folder]);
      expect(stdout).toMatch(/Timing spread +9\.0 ms \(.*\) +6\.2 ms \(.*\) +−31 %/);
      expect(stdout).toContain('without a verdict');
      expect(runProgram(['compare', 'newest', '--library', library.folder]).status).toBe(2);
    }));
});

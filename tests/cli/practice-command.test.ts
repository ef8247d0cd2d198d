import { describe, expect, it } from 'vitest';
import { dayNumber, dayOf, weekOf } from '../../src/core/progress/day-number.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import type { FolderLibrary } from '../../src/library/open-folder-library.ts';
import { addPerson } from '../../src/library/people.ts';
import { restDueOf } from '../../src/library/rest-due-of.ts';
import { madeTake } from '../library/made-take.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { runProgram } from './built-program.ts';

const personId = '6f9619ff-8b86-4d01-b42d-00cf4fc964ff';
const run = ({ folder }: FolderLibrary, ...args: string[]) =>
  runProgram(['practice', ...args, '--player', 'Mirelle', '--library', folder]);
const add = (library: FolderLibrary) =>
  addPerson(library.db, { id: personId, name: 'Mirelle', role: 'student', note: '', createdAt: 0 });
const now = new Date();
const today = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
const weekAgo = (weeks: number) => dayOf(dayNumber(weekOf(today)) - 7 * weeks);

describe('evenhand practice', () => {
  it("sums recorded takes by hand, and says that they aren't all", () =>
    withLibrary(async (library) => {
      await add(library);
      await keepTake(library, madeTake(1, { personId, day: today }));
      const { strokes, recording } = madeTake(1).result;
      const right = strokes.hand.filter((hand) => hand === 'R').length;
      const { stdout, status } = run(library);
      expect(status).toBe(0);
      expect(stdout).toMatch(
        new RegExp(`^${today} +${(recording.duration / 60).toFixed(1)} min +– +${right} `, 'm'),
      );
      expect(stdout).toContain('Recorded takes only, so the true amount is larger.');
      expect(stdout).toMatch(/No medical\s+advice comes from here/);
    }));

  it('adds what was logged, states a jump as a fact, and forgets what is deleted', () =>
    withLibrary(async (library) => {
      await add(library);
      for (const weeks of [4, 3, 2]) run(library, 'log', '20', '--day', weekAgo(weeks));
      const { stdout: logged } = run(
        library,
        'log',
        '95',
        '--day',
        weekAgo(1),
        '--note',
        'concert',
        '--right',
        '900',
      );
      const { stdout } = run(library);
      expect(stdout).toContain('Recorded takes, and minutes written down by hand.');
      expect(stdout).toMatch(/Week from \d+\u00a0[A-Z][a-z]{2}: 95 minutes, after 20 a week/);
      expect(stdout).toMatch(new RegExp(`^${weekAgo(1)} +– +95.0 min +900 `, 'm'));
      expect(stdout).toContain('concert');
      expect(run(library, 'delete', logged.slice(0, 8)).stdout).toBe('Minutes deleted.\n');
      expect(run(library).stdout).not.toContain('95 minutes');
    }));

  it('takes a note on discomfort, which stops tempo advice until it is deleted', () =>
    withLibrary(async (library) => {
      await add(library);
      await keepTake(library, madeTake(1, { personId, day: today }));
      const noted = run(library, 'discomfort', 'left wrist').stdout;
      expect(noted).toContain('see a physician or physiotherapist');
      const next = () =>
        runProgram(['progress', '--player', 'Mirelle', '--library', library.folder]).stdout.match(
          /^Next: .*/m,
        )![0];
      expect(next()).toContain('You noted discomfort');
      expect(run(library).stdout).toContain('left wrist');
      expect(run(library, 'delete', noted.slice(0, 8)).stdout).toBe('Note deleted.\n');
      expect(next()).not.toContain('discomfort');
    }));

  it("refuses what can't be, with one sentence and nothing kept", () =>
    withLibrary(async (library) => {
      await add(library);
      for (const [args, words] of [
        [['log', '2000'], 'from 1 to 1440'],
        [['log', 'long'], 'from 1 to 1440'],
        [['log', '20', '--day', '2999-01-01'], 'yet to come'],
        [['discomfort', ' '], 'The note is empty'],
        [['delete', 'abcd'], 'is called "abcd"'],
      ] as const) {
        const { status, stderr, stdout } = run(library, ...args);
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr).toContain(words);
      }
      expect(run(library).stdout).toContain('Nothing was recorded or logged.');
    }));
});

describe('restDueOf', () => {
  it("reads a player's takes of the last hour", () =>
    withLibrary(async (library) => {
      await add(library);
      const end = Date.UTC(2026, 2, 9, 18);
      const { duration } = madeTake(0).result.recording;
      for (let i = 0; i <= 6; i++)
        await keepTake(library, madeTake(i, { personId, recordedAt: end - 540_000 * i }));
      expect(duration).toBeLessThan(300);
      expect(await restDueOf(library.db, personId, end)).toBe(true);
      expect(await restDueOf(library.db, personId, end + 600_000)).toBe(false);
      expect(await restDueOf(library.db, null, end)).toBe(false);
    }));
});

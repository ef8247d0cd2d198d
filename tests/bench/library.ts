import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { CompiledQuery } from 'kysely';
import { assignmentPlays } from '../../src/library/assignment-plays.ts';
import { listAssignments, setAssignment } from '../../src/library/assignments.ts';
import { filterChoices } from '../../src/library/filter-choices.ts';
import { lessonOf, lessonsOf } from '../../src/library/lesson.ts';
import { listLinePlays } from '../../src/library/line-plays.ts';
import { listSheets } from '../../src/library/list-sheets.ts';
import { countTakes, listTakes, type TakeOrder } from '../../src/library/list-takes.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { listPeople } from '../../src/library/people.ts';
import { playedExercises } from '../../src/library/played-exercises.ts';
import { exerciseCourse, nextTempoOf, playerProgress } from '../../src/library/player-progress.ts';
import { practiceDays } from '../../src/library/practice.ts';
import { readTake } from '../../src/library/read-take.ts';
import { restDueOf } from '../../src/library/rest-due-of.ts';
import { storageUse } from '../../src/library/storage-use.ts';
import type { TakeFilter } from '../../src/library/take-filter.ts';
import { asked, day, exerciseId, exercises, fillLibrary, hex, people, takes } from './large-library.ts';

/** How long listings take in a large library; writes reports/library.md. */
const limitMs = 200;

const assignment = {
  id: 'assignment-3',
  personId: 'person-3',
  sheetText: `${exerciseId(asked)}\n`,
  bpm: null,
  dueDay: day(3649),
  note: '',
  setAt: Date.UTC(2025, 11, 20),
  doneAt: null,
};
/** What was tried for progress in everything ever played, on one library in a row while other programs ran. */
const tried = [
  'Progress in all 300 exercises of ten years at once (5,000 lines of one player) is no view any more: the page shows twelve exercises at a time. What was tried for it, in ms of processor time, the fastest of nine runs, other programs running beside:',
  '',
  '| how | ms |',
  '|---|---|',
  '| a query for the lines and one for the scores of each exercise | 408 |',
  '| one walk along `takeLineByPerson` for all exercises, days and likeness worked out once | 272 |',
  '| the same with an index that holds all of a line (205 MB more, 22 % of the tables) | 280 |',
  '| the walk, twelve exercises | 55 |',
  '',
  'The index was left out: what takes the time is making objects of 5,000 lines, not finding them. Plan of the walk: `SEARCH takeLine USING INDEX takeLineByPerson (personId=? AND exerciseId=?)`, `SEARCH take USING INDEX sqlite_autoindex_take_1 (id=?)`. Of the exercises played since a day: `SEARCH take USING INDEX takeByPerson (personId=? AND recordedAt>?)`, then `SEARCH takeLine USING INDEX sqlite_autoindex_takeLine_1 (takeId=?)`; asked by the day alone it read every line of the player, and the lessons with 40 players took five times as long.',
  '',
  'The lessons with everybody (438 exercises of 40 players), in ms of processor time, two rounds of nine runs each in turn, other programs running beside; the first run of a program, while Node still compiles, took 350 to 490 in both:',
  '',
  '| how | fastest | middle |',
  '|---|---|---|',
  '| before, without next tempos | 193, 237 | 283, 262 |',
  '| lines found by their moment, likeness and weakest lines worked out once, statements kept prepared; with next tempos | 127, 123 | 213, 168 |',
  '| the same while no row says whether the end of its take gave way (kept by an older program, until graded again; one round) | 281 | 352 |',
  '',
  'Then days of practice were found by the index of days, and exercises since a day by their takes alone, in place of all that a player ever played: on a quiet machine 394 ms before (wall time, the middle of seven runs), after it the row in the first table.',
  '',
];
const folder = mkdtempSync(join(tmpdir(), 'evenhand-bench-'));
const library = await openFolderLibrary(folder);
const { db } = library;
try {
  await fillLibrary(db);
  const rows: string[] = [];
  let slowest = 0;
  const over: string[] = [];
  const time = async (name: string, work: () => Promise<unknown>, isView = true) => {
    const runs: number[] = [];
    for (let run = 0; run < 7; run++) {
      const start = performance.now();
      await work();
      runs.push(performance.now() - start);
    }
    const worst = Math.max(...runs);
    const middle = [...runs].sort((a, b) => a - b)[3]!;
    if (isView) slowest = Math.max(slowest, worst);
    if (isView && worst > limitMs) over.push(name);
    rows.push(`| ${name} | ${middle.toFixed(1)} | ${worst.toFixed(1)} |`);
  };
  const listing = (name: string, filter: TakeFilter, order: TakeOrder = 'newest') =>
    time(name, () => listTakes(db, { filter, order }));
  await setAssignment(db, assignment);
  const middle = await listTakes(db, { filter: { toDay: day(1800) }, limit: 1 });

  await listing('newest 30 takes', {});
  await listing('oldest 30 takes', {}, 'oldest');
  await listing('30 takes with the highest scores', {}, 'cleanest');
  await time('30 takes from the middle on', () => listTakes(db, { after: middle.next }));
  await time('200 takes', () => listTakes(db, { limit: 200 }));
  await listing('one player', { personId: 'person-3' });
  await listing('one exercise', { exerciseId: exerciseId(asked) });
  await listing('one player, one exercise', { personId: 'person-3', exerciseId: exerciseId(asked) });
  await listing('one exercise, a tempo that it never had', { exerciseId: exerciseId(asked), fromBpm: 200 });
  await listing('a tempo that no take had', { fromBpm: 200 });
  await listing('no such player', { personId: 'nobody' });
  await listing('one tag', { tag: 'lesson' });
  await listing('one tag, one player', { tag: 'lesson', personId: 'person-0' });
  await listing('one technique', { technique: 'wrist' });
  await listing('words in the title', { title: 'sheet 299' });
  await listing('words that no title has', { title: 'nowhere' });
  await listing('a month nine years ago', { fromDay: '2017-03-01', toDay: '2017-03-31' });
  await listing('one player, highest scores', { personId: 'person-3' }, 'cleanest');
  await time('how many takes', () => countTakes(db, {}));
  await time('how many of one player', () => countTakes(db, { personId: 'person-3' }));
  await time('how many at a tempo', () => countTakes(db, { fromBpm: 100, toBpm: 120 }));
  await time('how many with words in the title', () => countTakes(db, { title: 'sheet 29' }));
  await time('people with their takes', () => listPeople(db));
  await time('what to choose from', () => filterChoices(db));
  await time('sheets', () => listSheets(db, 30));
  await time('room taken up', () => storageUse(db));
  await time("a player's playings of one exercise, all ten years", () =>
    listLinePlays(db, { personId: 'person-3', exerciseId: exerciseId(asked) }),
  );
  await time("a player's days of practice, all ten years", () =>
    practiceDays(db, { personId: 'person-3', fromDay: '2016-01-01', toDay: '2026-12-31' }),
  );
  const player = { personId: 'person-3', today: day(3649) };
  const exercise = { id: exerciseId(asked), label: '', notation: '' };
  await time("a player's exercises", () => playedExercises(db, 'person-3'));
  await time('progress in one exercise, all ten years', () => exerciseCourse(db, { ...player, exercise }));
  await time('the next tempo of one exercise', () =>
    nextTempoOf(db, { ...player, exerciseId: exerciseId(asked) }),
  );
  await time("a player's progress, twelve weeks, all exercises", () =>
    playerProgress(db, { ...player, fromDay: day(3649 - 84) }),
  );
  await time("a player's progress, all ten years, as the page shows it: 12 exercises", () =>
    playerProgress(db, { ...player, limit: 12 }),
  );
  await time(
    "a player's progress, all ten years, all 300 exercises at once (no view)",
    () => playerProgress(db, player),
    false,
  );
  await time('the lessons with everybody', () => lessonsOf(db, { today: day(3649), since: day(3642) }));
  await time('a lesson with one player', () => lessonOf(db, { ...player, since: day(3642) }));
  await time("all of a studio's assignments that are open", () => listAssignments(db));
  await time('what was played to an assignment', () => assignmentPlays(db, assignment));
  await time('whether a rest is due', () => restDueOf(db, 'person-3', Date.UTC(2025, 11, 28)));
  await time('one take opened', () => readTake(db, hex(5000, 32)));
  const pages = await db.executeQuery(CompiledQuery.raw('pragma page_count'));
  const megabytes = ((pages.rows[0] as { page_count: number }).page_count * 4096) / 1e6;

  const [load = 0] = loadavg();
  const report = [
    '# Listings of a large library',
    '',
    `${takes.toLocaleString('en')} takes of two lines, ${people} players, ${exercises} exercises, ten years; tables of ${megabytes.toFixed(0)} MB, SQLite on ${cpus()[0]?.model ?? 'this machine'}. Milliseconds: the middle and the slowest of seven runs in a row, at a load of ${load.toFixed(0)} on ${cpus().length} processors. A listing takes less than ${limitMs}${over.length === 0 ? '' : `, but for ${over.join('; ')}`}.`,
    '',
    '| what is asked | middle | slowest |',
    '|---|---|---|',
    ...rows,
    '',
    ...tried,
    '',
  ].join('\n');
  console.log(report);
  mkdirSync('reports', { recursive: true });
  writeFileSync('reports/library.md', report);
  if (slowest > limitMs) process.exitCode = 1;
} finally {
  await library.close();
  rmSync(folder, { recursive: true });
}

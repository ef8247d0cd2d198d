import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setAssignment } from '../../../src/library/assignments.ts';
import { keepTake } from '../../../src/library/keep-take.ts';
import { type FolderLibrary, openFolderLibrary } from '../../../src/library/open-folder-library.ts';
import { addPerson } from '../../../src/library/people.ts';
import { writeDiscomfort, writePractice } from '../../../src/library/practice.ts';
import { writeRemark } from '../../../src/library/remarks.ts';
import { madeTake, sheetText } from '../made-take.ts';

/** Fills a library with one row or more in every table that people write into. */
export async function fill(library: FolderLibrary, takes = 3): Promise<void> {
  const { db } = library;
  await addPerson(db, { id: 'p', name: 'Mirelle', role: 'student', note: '', createdAt: 1 });
  for (let number = 0; number < takes; number++)
    await keepTake(library, madeTake(number, { personId: 'p', tags: ['lesson'] }));
  const { id } = await db.selectFrom('take').select('id').orderBy('id').executeTakeFirstOrThrow();
  const written = { author: 'Ms Oduya', writtenAt: 1, changedAt: 1 };
  await writeRemark(db, { id: 'r', takeId: id, moment: 1, text: 'Left waits', ...written });
  const dates = { setAt: 1, dueDay: '2026-04-01', doneAt: null };
  await setAssignment(db, { id: 'a', personId: 'p', bpm: 100, note: '', sheetText, ...dates });
  const day = { personId: 'p', day: '2026-03-09' };
  await writePractice(db, { id: 'm', ...day, minutes: 20, strokesRight: null, strokesLeft: null, note: '' });
  await writeDiscomfort(db, { id: 'd', ...day, text: 'left wrist' });
}

/** Every row of every table, to hold two libraries against each other. */
export async function everything({ db }: FolderLibrary): Promise<Record<string, unknown>> {
  const tables = (await db.introspection.getTables()).map(({ name }) => name).sort();
  const rows: Record<string, unknown> = {};
  for (const table of tables.filter((name) => !name.startsWith('sqlite_')))
    rows[table] = await db
      .selectFrom(table as 'take')
      .selectAll()
      .execute();
  return rows;
}

/** A folder of its own, deleted afterwards. */
export async function inFolders(check: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-backup-'));
  try {
    await check(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function opened<T>(folder: string, work: (library: FolderLibrary) => Promise<T>): Promise<T> {
  const library = await openFolderLibrary(folder);
  try {
    return await work(library);
  } finally {
    await library.close();
  }
}

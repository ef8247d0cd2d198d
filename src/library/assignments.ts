import type { Selectable } from 'kysely';
import { parseSheet } from '../core/exercise/parse-sheet.ts';
import { checkDay } from './check-day.ts';
import { sheetId } from './content-ids.ts';
import { dropUnused } from './delete-takes.ts';
import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import type { AssignmentTable } from './library-schema.ts';
import { nameKey } from './name-key.ts';

/** What somebody is to practise until when. */
export interface Assignment extends Readonly<Omit<Selectable<AssignmentTable>, 'sheetId'>> {
  readonly sheetText: string;
}

export interface ListedAssignment extends Assignment {
  readonly title: string;
}

/** Hands out an assignment; throws `LibraryFault` for a sheet that can't be read or a player who isn't there. */
export async function setAssignment(db: LibraryDb, assignment: Assignment): Promise<void> {
  const { sheetText, ...row } = assignment;
  const parsed = parseSheet(sheetText);
  if (!parsed.ok)
    throw new LibraryFault('value-out-of-range', {
      what: 'Sheet of the assignment',
      value: sheetText.slice(0, 60),
      expected: `It can't be read: ${parsed.faults[0]?.code ?? 'empty'}.`,
    });
  if (row.dueDay !== null) checkDay('Day of the assignment', row.dueDay);
  const id = await sheetId(sheetText);
  const { title, lines } = parsed.sheet;
  await db.transaction().execute(async (transaction) => {
    await transaction
      .insertInto('sheet')
      .values({ id, title, titleKey: nameKey(title), text: sheetText, lines: lines.length })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    await transaction
      .insertInto('assignment')
      .values({ ...row, sheetId: id })
      .execute();
  });
}

/** Assignments, newest first: of one player, of none (null), or all. */
export async function listAssignments(
  db: LibraryDb,
  { personId, limit = 100 }: { readonly personId?: string | null; readonly limit?: number } = {},
): Promise<readonly ListedAssignment[]> {
  const rows = await db
    .selectFrom('assignment')
    .innerJoin('sheet', 'sheet.id', 'assignment.sheetId')
    .selectAll('assignment')
    .select(['sheet.title', 'sheet.text as sheetText'])
    .$if(personId !== undefined, (query) => query.where('assignment.personId', 'is', personId!))
    .orderBy('assignment.setAt', 'desc')
    .orderBy('assignment.id')
    .limit(limit)
    .execute();
  return rows.map(({ sheetId: _, ...row }) => row);
}

/** Marks an assignment as done, or as open again with null. */
export async function finishAssignment(
  db: LibraryDb,
  { id, doneAt }: { readonly id: string; readonly doneAt: number | null },
): Promise<void> {
  await db.updateTable('assignment').set({ doneAt }).where('id', '=', id).execute();
}

export async function deleteAssignment(db: LibraryDb, id: string): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    await transaction.deleteFrom('assignment').where('id', '=', id).execute();
    await dropUnused(transaction, []);
  });
}

import { type DeletedTakes, deleteTakes } from './delete-takes.ts';
import type { Library, LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';

/** Gives a take to a player, or to none. */
export async function giveTake(
  db: LibraryDb,
  { takeId, personId }: { readonly takeId: string; readonly personId: string | null },
): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    if (personId !== null) await expectPerson(transaction, personId);
    const { numUpdatedRows } = await transaction
      .updateTable('take')
      .set({ personId })
      .where('id', '=', takeId)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) throw new LibraryFault('no-such-take');
    await transaction.updateTable('takeLine').set({ personId }).where('takeId', '=', takeId).execute();
  });
}

/** Makes one person of two: all that `from` has goes to `into`, and `from` is known as `into` from then on. */
export async function mergePeople(
  db: LibraryDb,
  { from, into }: { readonly from: string; readonly into: string },
): Promise<void> {
  if (from === into) return;
  await db.transaction().execute(async (transaction) => {
    await expectPerson(transaction, from);
    await expectPerson(transaction, into);
    const tables = [
      'take',
      'takeLine',
      'setUp',
      'assignment',
      'practice',
      'discomfort',
      'personAlias',
    ] as const;
    for (const table of tables) {
      await transaction.updateTable(table).set({ personId: into }).where('personId', '=', from).execute();
    }
    await transaction.deleteFrom('person').where('id', '=', from).execute();
    await transaction.insertInto('personAlias').values({ aliasId: from, personId: into }).execute();
  });
}

/** Deletes a person with all takes, recordings, assignments and notes, for good. */
export async function deletePerson(library: Library, id: string): Promise<DeletedTakes> {
  const { db } = library;
  await expectPerson(db, id);
  const takes = await db.selectFrom('take').select('id').where('personId', '=', id).execute();
  const deleted = await deleteTakes(
    library,
    takes.map((take) => take.id),
  );
  await db.deleteFrom('person').where('id', '=', id).execute();
  return deleted;
}

async function expectPerson(db: LibraryDb, id: string): Promise<void> {
  const person = await db.selectFrom('person').select('id').where('id', '=', id).executeTakeFirst();
  if (person === undefined) throw new LibraryFault('no-such-person');
}

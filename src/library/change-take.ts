import type { TakeResult } from '../core/result/take-result.ts';
import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { plainName } from './name-key.ts';
import type { TakeDetails } from './new-take.ts';
import { packResult, readResult } from './stored-result.ts';
import { exerciseRows, lineRows, plainTags } from './take-rows.ts';
import { takeSummary } from './take-summary.ts';

/** Changes what a player wrote down about a take; what isn't given stays. */
export async function changeTake(
  db: LibraryDb,
  { id, tags, ...details }: { readonly id: string; readonly tags?: readonly string[] } & Partial<TakeDetails>,
): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    const changes = Object.entries(details).map(([name, text]) => [name, plainName(text)]);
    const take = await transaction
      .updateTable('take')
      .set({ ...Object.fromEntries(changes), id })
      .where('id', '=', id)
      .returning('recordedAt')
      .executeTakeFirst();
    if (take === undefined) throw new LibraryFault('no-such-take');
    if (tags === undefined) return;
    await transaction.deleteFrom('takeTag').where('takeId', '=', id).execute();
    const rows = plainTags(tags).map((tag) => ({ takeId: id, tag, recordedAt: take.recordedAt }));
    if (rows.length > 0) await transaction.insertInto('takeTag').values(rows).execute();
  });
}

/** Puts a newer grading of the same recording and sheet in the place of a take's result. */
export async function regradeTake(
  db: LibraryDb,
  {
    id,
    result,
    gradedWith,
  }: { readonly id: string; readonly result: TakeResult; readonly gradedWith: string },
): Promise<void> {
  const read = readResult(result);
  await db.transaction().execute(async (transaction) => {
    const take = await transaction
      .updateTable('take')
      .set({ ...takeSummary(read), gradedWith })
      .where('id', '=', id)
      .returning(['id', 'personId', 'recordedAt', 'day'])
      .executeTakeFirst();
    if (take === undefined) throw new LibraryFault('no-such-take');
    const row = { version: read.version, json: packResult(read) };
    await transaction.updateTable('takeResult').set(row).where('takeId', '=', id).execute();
    await transaction
      .insertInto('exercise')
      .values(exerciseRows(read))
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    await transaction.deleteFrom('takeLine').where('takeId', '=', id).execute();
    await transaction.insertInto('takeLine').values(lineRows(take, read)).execute();
  });
}

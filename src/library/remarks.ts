import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import type { RemarkTable } from './library-schema.ts';
import { plainName } from './name-key.ts';

export type Remark = Readonly<RemarkTable>;

const mostCharacters = 10_000;

/** A take's remarks, those on the whole take first, then by their moment. */
export async function listRemarks(db: LibraryDb, takeId: string): Promise<readonly Remark[]> {
  return db
    .selectFrom('remark')
    .selectAll()
    .where('takeId', '=', takeId)
    .orderBy('moment')
    .orderBy('writtenAt')
    .orderBy('id')
    .execute();
}

/**
 * Writes a remark, or its newer version: an earlier `changedAt` than the kept one's changes nothing. Returns whether
 * anything changed. Throws `LibraryFault` without the take, or for an empty or overlong text.
 */
export async function writeRemark(db: LibraryDb, remark: Remark): Promise<boolean> {
  const text = remark.text.trim();
  if (text === '' || text.length > mostCharacters)
    throw new LibraryFault('value-out-of-range', {
      what: 'Remark',
      value: text.slice(0, 40),
      expected: `Write between 1 and ${mostCharacters} characters.`,
    });
  if (remark.moment !== null && !(remark.moment >= 0 && Number.isFinite(remark.moment)))
    throw new LibraryFault('value-out-of-range', {
      what: 'Moment of the remark',
      value: remark.moment,
      expected: 'It lies 0 or more seconds from the start of the recording.',
    });
  const take = await db.selectFrom('take').select('id').where('id', '=', remark.takeId).executeTakeFirst();
  if (take === undefined) throw new LibraryFault('no-such-take');
  const row = { ...remark, text, author: plainName(remark.author) };
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('remark')
    .values(row)
    .onConflict((conflict) =>
      conflict
        .column('id')
        .doUpdateSet({ moment: row.moment, text, changedAt: row.changedAt })
        .where('remark.changedAt', '<', row.changedAt)
        .where('remark.takeId', '=', row.takeId),
    )
    .executeTakeFirst();
  return (numInsertedOrUpdatedRows ?? 0n) > 0n;
}

export async function deleteRemark(db: LibraryDb, id: string): Promise<void> {
  await db.deleteFrom('remark').where('id', '=', id).execute();
}

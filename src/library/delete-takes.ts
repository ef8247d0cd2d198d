import { CompiledQuery } from 'kysely';
import { removeUnreferencedAudio } from './delete-audio.ts';
import type { Library, LibraryDb } from './library.ts';

export interface DeletedTakes {
  readonly takes: number;
  /** Bytes of recordings that went with them. */
  readonly audioBytes: number;
}

/** Takes that go in one transaction. */
const atOnce = 500;

/**
 * Deletes takes for good, with their results, remarks and guesses, and the recordings, sheets and names of exercises
 * that nothing else uses. The room is given back; SQLite overwrites what it deletes (`secure_delete`). Takes that
 * aren't there are passed over.
 *
 * @example await deleteTakes(library, [id]) // { takes: 1, audioBytes: 2360684 }
 */
export async function deleteTakes(library: Library, ids: readonly string[]): Promise<DeletedTakes> {
  let takes = 0;
  let audioBytes = 0;
  for (let from = 0; from < ids.length; from += atOnce) {
    const some = ids.slice(from, from + atOnce);
    const gone = await library.db.transaction().execute(async (transaction) => {
      const rows = await transaction
        .deleteFrom('take')
        .where('id', 'in', some)
        .returning(['audioHash', 'sheetId'])
        .execute();
      takes += rows.length;
      return dropUnused(
        transaction,
        rows.flatMap(({ audioHash }) => audioHash ?? []),
      );
    });
    audioBytes += gone.reduce((sum, { bytes }) => sum + bytes, 0);
    await removeUnreferencedAudio(
      library,
      gone.map(({ hash }) => hash),
    );
  }
  if (takes > 0) await giveRoomBack(library.db);
  return { takes, audioBytes };
}

/** Deletes sheets, exercises and those of the given recordings that nothing uses any more; returns the recordings. */
export async function dropUnused(
  db: LibraryDb,
  hashes: readonly string[],
): Promise<readonly { hash: string; bytes: number }[]> {
  await db
    .deleteFrom('sheet')
    .where(({ not, exists, selectFrom, and }) =>
      and([
        not(exists(selectFrom('take').select('take.id').whereRef('take.sheetId', '=', 'sheet.id'))),
        not(
          exists(
            selectFrom('assignment').select('assignment.id').whereRef('assignment.sheetId', '=', 'sheet.id'),
          ),
        ),
      ]),
    )
    .execute();
  await db
    .deleteFrom('exercise')
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('takeLine')
            .select('takeLine.takeId')
            .whereRef('takeLine.exerciseId', '=', 'exercise.id')
            .where('takeLine.isFirst', '=', 1),
        ),
      ),
    )
    .execute();
  if (hashes.length === 0) return [];
  return db
    .deleteFrom('audio')
    .where('hash', 'in', hashes)
    .where(({ not, exists, selectFrom }) =>
      not(exists(selectFrom('take').select('take.id').whereRef('take.audioHash', '=', 'audio.hash'))),
    )
    .returning(['hash', 'bytes'])
    .execute();
}

/** Gives pages that hold nothing any more back to the device. */
async function giveRoomBack(db: LibraryDb): Promise<void> {
  await db.executeQuery(CompiledQuery.raw('pragma incremental_vacuum'));
  await db.executeQuery(CompiledQuery.raw('pragma wal_checkpoint(truncate)'));
}

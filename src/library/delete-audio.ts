import type { Library } from './library.ts';

/**
 * Deletes those of the named recordings that no take uses any more. Each is looked up and deleted under the write lock,
 * so that a take kept at the same moment keeps its recording.
 */
export async function removeUnreferencedAudio(
  { db, audio }: Library,
  hashes: readonly string[],
): Promise<number> {
  let removed = 0;
  for (const hash of new Set(hashes)) {
    await db.transaction().execute(async (transaction) => {
      const used = await transaction
        .selectFrom('audio')
        .select('hash')
        .where('hash', '=', hash)
        .executeTakeFirst();
      if (used !== undefined) return;
      await audio.delete(hash);
      removed++;
    });
  }
  return removed;
}

/** Clears away recordings that no take uses, as a crash may leave them; returns how many there were. */
export async function clearUnreferencedAudio(library: Library): Promise<number> {
  const rows = await library.db.selectFrom('audio').select('hash').execute();
  const used = new Set(rows.map(({ hash }) => hash));
  const stored = await library.audio.list();
  return removeUnreferencedAudio(
    library,
    stored.filter((hash) => !used.has(hash)),
  );
}

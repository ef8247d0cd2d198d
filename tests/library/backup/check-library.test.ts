import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { backUpLibrary } from '../../../src/library/backup/back-up-library.ts';
import { bringBackRecordings } from '../../../src/library/backup/bring-back-recordings.ts';
import { checkLibrary } from '../../../src/library/backup/check-library.ts';
import { type LibraryFinding, libraryFindingSentence } from '../../../src/library/backup/library-finding.ts';
import { backupSource } from '../../../src/library/backup/library-source.ts';
import { clearUnreferencedAudio } from '../../../src/library/delete-audio.ts';
import { audioFile } from '../../../src/library/folder-audio-store.ts';
import type { FolderLibrary } from '../../../src/library/open-folder-library.ts';
import { sha256Hex } from '../../../src/library/sha256-hex.ts';
import { fill, inFolders, opened } from './filled-library.ts';

async function findings(library: FolderLibrary): Promise<LibraryFinding[]> {
  const found: LibraryFinding[] = [];
  for await (const finding of checkLibrary(library)) found.push(finding);
  return found;
}

it('a check finds what was damaged, each in a sentence, and a backup brings recordings back', () =>
  inFolders(async (folder) => {
    const [own, backup] = [join(folder, 'own'), join(folder, 'backup')];
    await opened(own, async (library) => {
      await fill(library);
      expect(await findings(library)).toEqual([]);
      await backUpLibrary(library, backup);
      const [missing, damaged] = await library.db.selectFrom('audio').selectAll().execute();
      rmSync(audioFile(own, missing!.hash));
      writeFileSync(audioFile(own, damaged!.hash), new Uint8Array(damaged!.bytes));
      const stray = new Uint8Array(50);
      await library.audio.put(await sha256Hex(stray), stray);
      const { id } = await library.db.selectFrom('take').select('id').orderBy('id').executeTakeFirstOrThrow();
      await library.db
        .updateTable('takeResult')
        .set({ json: new Uint8Array([1, 2, 3]) })
        .where('takeId', '=', id)
        .execute();
      const database = new Database(join(own, 'takes.sqlite'));
      database.exec("pragma foreign_keys = off; insert into takeTag values ('nobody', 'lost', 1)");
      database.close();

      const found = await findings(library);
      expect(found.map(({ code }) => code).toSorted()).toEqual([
        'recording-damaged',
        'recording-missing',
        'recordings-unused',
        'result-unreadable',
        'rows-unconnected',
      ]);
      for (const finding of found) expect(libraryFindingSentence(finding)).toMatch(/^[A-Z1].*\. .+\w\.$/s);
      expect(await bringBackRecordings(library, backupSource(backup))).toBe(2);
      expect(await clearUnreferencedAudio(library)).toBe(1);
      expect((await findings(library)).map(({ code }) => code)).toEqual([
        'rows-unconnected',
        'result-unreadable',
      ]);
    });
  }));

it('a check finds damage inside the tables', () =>
  inFolders(async (folder) => {
    await opened(folder, (library) => fill(library, 1));
    const database = new Database(join(folder, 'takes.sqlite'));
    database.unsafeMode();
    // Two indexes change places: each is sound, but not the one of its columns.
    database.exec(`pragma writable_schema = on;
      create temp table root as select name, rootpage from sqlite_schema where name in ('takeByScore', 'takeByTechnique');
      update sqlite_schema set rootpage = (select rootpage from root where root.name <> sqlite_schema.name)
      where name in ('takeByScore', 'takeByTechnique')`);
    database.close();
    await opened(folder, async (library) =>
      expect((await findings(library)).map(({ code }) => code)).toContain('tables-damaged'),
    );
  }));

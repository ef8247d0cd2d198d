import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { backUpLibrary } from '../../../src/library/backup/back-up-library.ts';
import { backupSource } from '../../../src/library/backup/library-source.ts';
import { restoreLibrary } from '../../../src/library/backup/restore-library.ts';
import { deleteTakes } from '../../../src/library/delete-takes.ts';
import { audioFile } from '../../../src/library/folder-audio-store.ts';
import { keepTake } from '../../../src/library/keep-take.ts';
import { readAudio } from '../../../src/library/read-take.ts';
import { madeAudio, madeTake } from '../made-take.ts';
import { everything, fill, inFolders, opened } from './filled-library.ts';

const code = (fault: string) => expect.objectContaining({ code: fault });

describe('a backup', () => {
  it('brings back every row and every recording, into an empty place and in the place of another library', () =>
    inFolders(async (folder) => {
      const [own, backup, fresh, other] = ['own', 'backup', 'fresh', 'other'].map((name) =>
        join(folder, name),
      );
      const before = await opened(own!, async (library) => {
        await fill(library);
        expect(await backUpLibrary(library, backup!)).toMatchObject({ takes: 3, copied: 3, lacking: [] });
        return everything(library);
      });
      expect(Object.values(before).filter((rows) => (rows as unknown[]).length > 0).length).toBeGreaterThan(
        11,
      );
      expect(await restoreLibrary(backupSource(backup!), fresh!)).toMatchObject({ takes: 3, recordings: 3 });
      await opened(other!, (library) => keepTake(library, madeTake(77)));
      await expect(restoreLibrary(backupSource(backup!), other!)).rejects.toEqual(code('library-not-empty'));
      expect(await opened(other!, (library) => library.audio.list())).toHaveLength(1);
      await restoreLibrary(backupSource(backup!), other!, { replace: true });
      for (const place of [fresh!, other!])
        await opened(place, async (library) => {
          expect(await everything(library)).toEqual(before);
          expect((await library.audio.list()).toSorted()).toEqual(
            (before.audio as { hash: string }[]).map(({ hash }) => hash).toSorted(),
          );
          const { id } = (await library.db.selectFrom('take').selectAll().execute()).find(
            ({ day }) => day === '2026-03-10',
          )!;
          expect(await readAudio(library, id)).toEqual(madeAudio(1));
        });
    }));

  it('copies only what is new, drops what was deleted, and reads while others write', () =>
    inFolders(async (folder) => {
      const backup = join(folder, 'backup');
      await opened(join(folder, 'own'), async (library) => {
        await fill(library);
        await backUpLibrary(library, backup);
        // Somebody looks into the backup as into any library.
        await opened(backup, async ({ db }) => expect(await everything({ db } as never)).toBeDefined());
        const [gone] = await library.db.selectFrom('take').select('id').limit(1).execute();
        await deleteTakes(library, [gone!.id]);
        const writing = (async () => {
          for (let number = 10; number < 20; number++) await keepTake(library, madeTake(number));
        })();
        const second = await backUpLibrary(library, backup);
        await writing;
        expect(second).toMatchObject({ cleared: 1, lacking: [] });
        expect(second.copied).toBe(second.takes - 2);
      });
      await opened(backup, async (library) => {
        const { audio } = await everything(library);
        expect(audio).toHaveLength((await library.audio.list()).length);
      });
    }));

  it('says which recordings the library lacks, and a restore goes on without them only when asked', () =>
    inFolders(async (folder) => {
      const [own, backup, place] = ['own', 'backup', 'place'].map((name) => join(folder, name)) as [
        string,
        string,
        string,
      ];
      await opened(own, async (library) => {
        await fill(library);
        const [first] = await library.db.selectFrom('audio').selectAll().execute();
        rmSync(audioFile(own, first!.hash));
        expect((await backUpLibrary(library, backup)).lacking).toEqual([first]);
      });
      await expect(restoreLibrary(backupSource(backup), place)).rejects.toEqual(code('backup-incomplete'));
      await opened(place, async (library) => {
        expect(await library.audio.list()).toEqual([]);
        expect((await everything(library)).take).toEqual([]);
      });
      expect(await restoreLibrary(backupSource(backup), place, { incomplete: true })).toMatchObject({
        takes: 3,
        recordings: 2,
      });
    }));

  it('refuses places that hold other things, the library itself and what lies in it', () =>
    inFolders(async (folder) => {
      const own = join(folder, 'own');
      mkdirSync(join(folder, 'letters'));
      writeFileSync(join(folder, 'letters', 'a.txt'), 'Dear');
      await opened(own, async (library) => {
        await fill(library, 1);
        await expect(backUpLibrary(library, join(folder, 'letters'))).rejects.toEqual(
          code('backup-place-taken'),
        );
        for (const place of [own, join(own, 'backup'), folder])
          await expect(backUpLibrary(library, place)).rejects.toEqual(code('backup-overlaps'));
      });
      expect(readdirSync(join(folder, 'letters'))).toEqual(['a.txt']);
      expect(() => backupSource(join(folder, 'letters'))).toThrow('no-backup-there');
    }));

  it('is not taken when its tables are damaged, foreign or newer', () =>
    inFolders(async (folder) => {
      const [own, backup, place] = ['own', 'backup', 'place'].map((name) => join(folder, name)) as [
        string,
        string,
        string,
      ];
      const tables = join(backup, 'takes.sqlite');
      const changed = async (statement: string) => {
        await opened(own, (library) => backUpLibrary(library, backup));
        const database = new Database(tables);
        database.exec(statement);
        database.close();
        return restoreLibrary(backupSource(backup), place);
      };
      await opened(own, (library) => fill(library, 1));
      await expect(
        changed('create trigger t after insert on take begin delete from person; end'),
      ).rejects.toEqual(code('backup-damaged'));
      await expect(changed('create view sqliteXfree as select 1')).rejects.toEqual(code('backup-damaged'));
      await expect(changed('pragma foreign_keys = off; delete from sheet')).rejects.toEqual(
        code('backup-damaged'),
      );
      await expect(changed('pragma user_version = 999')).rejects.toEqual(code('library-is-newer'));
      await opened(own, (library) => backUpLibrary(library, backup));
      const bytes = readFileSync(tables);
      bytes.fill(0x5a, 8192, 16384);
      writeFileSync(tables, bytes);
      await expect(restoreLibrary(backupSource(backup), place)).rejects.toEqual(code('backup-damaged'));
      expect(existsSync(place)).toBe(false);
    }));
});

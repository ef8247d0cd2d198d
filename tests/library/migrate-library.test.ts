import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { CompiledQuery } from 'kysely';
import { describe, expect, it, vi } from 'vitest';
import { keepTake } from '../../src/library/keep-take.ts';
import { LibraryFault } from '../../src/library/library-fault.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import { migrateLibrary } from '../../src/library/migrate-library.ts';
import { migrations } from '../../src/library/migrations/index.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { madeTake } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

const version = async (library: { db: Parameters<typeof migrateLibrary>[0] }) =>
  (await library.db.executeQuery(CompiledQuery.raw('pragma user_version'))).rows;

describe('migrateLibrary', () => {
  it('takes each step once, and keeps what is there', () =>
    withLibrary(async (library) => {
      await keepTake(library, madeTake(1));
      const more = [
        ...migrations,
        { title: 'a new column', statements: ["alter table take add column place text not null default ''"] },
      ];
      expect(await migrateLibrary(library.db, more)).toBe(1);
      expect(await migrateLibrary(library.db, more)).toBe(0);
      expect(await version(library)).toEqual([{ user_version: migrations.length + 1 }]);
      expect((await listTakes(library.db)).takes[0]).toMatchObject({ place: '' });
    }));

  it('takes a step whole or not at all', () =>
    withLibrary(async (library) => {
      const broken = [
        ...migrations,
        { title: 'half', statements: ['create table half (id text) strict', 'create nonsense'] },
      ];
      await expect(migrateLibrary(library.db, broken)).rejects.toThrow();
      expect(await version(library)).toEqual([{ user_version: migrations.length }]);
      const { rows } = await library.db.executeQuery(
        CompiledQuery.raw("select name from sqlite_master where name = 'half'"),
      );
      expect(rows).toEqual([]);
    }));

  it('leaves a library of a newer program alone', () =>
    withLibrary(async (library) => {
      await expect(migrateLibrary(library.db, migrations.slice(0, -1))).rejects.toMatchObject({
        code: 'library-is-newer',
      });
    }));
});

describe('openFolderLibrary', () => {
  it('is safe against crashes, other programs and loose ends by its settings, and sound by its own check', () =>
    withLibrary(async (library) => {
      await keepTake(library, madeTake(1));
      const setting = async (name: string) =>
        Object.values(
          (await library.db.executeQuery(CompiledQuery.raw(`pragma ${name}`))).rows[0] as object,
        )[0];
      expect(await setting('journal_mode')).toBe('wal');
      expect(await setting('synchronous')).toBe(2);
      expect(await setting('foreign_keys')).toBe(1);
      expect(await setting('secure_delete')).toBe(1);
      expect(await setting('busy_timeout')).toBe(10_000);
      expect(await setting('auto_vacuum')).toBe(2);
      expect(await setting('integrity_check')).toBe('ok');
      const { rows } = await library.db.executeQuery(CompiledQuery.raw('pragma foreign_key_check'));
      expect(rows).toEqual([]);
    }));

  it('says so when another program writes for too long', () =>
    withLibrary(async (library) => {
      const writer = new Database(join(library.folder, 'takes.sqlite'));
      writer.exec('begin immediate');
      await library.db.executeQuery(CompiledQuery.raw('pragma busy_timeout = 50'));
      await expect(keepTake(library, madeTake(4))).rejects.toMatchObject({ code: 'library-busy' });
      expect(await library.audio.list()).toHaveLength(1); // it can't be cleared away just now
      writer.exec('rollback');
      writer.close();
      expect((await keepTake(library, madeTake(4))).outcome).toBe('kept');
    }));

  it('says what is missing where better-sqlite3 cannot be loaded', async () => {
    vi.doMock('better-sqlite3', () => {
      throw new Error('Could not locate the bindings file.\nTried: …');
    });
    await expect(openFolderLibrary('/nowhere')).rejects.toMatchObject({ code: 'no-sqlite' });
    vi.doUnmock('better-sqlite3');
  });

  it('refuses a file that is no library, and a folder that is a file', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'evenhand-library-'));
    writeFileSync(join(folder, 'takes.sqlite'), 'not a database at all, but long enough to be taken for one');
    await expect(openFolderLibrary(folder)).rejects.toBeInstanceOf(LibraryFault);
    await expect(openFolderLibrary(join(folder, 'takes.sqlite'))).rejects.toMatchObject({
      code: 'not-a-library',
    });
    rmSync(folder, { recursive: true });
  });
});

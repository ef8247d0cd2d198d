import { readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backUpLibrary } from '../../src/library/backup/back-up-library.ts';
import { backupSource } from '../../src/library/backup/library-source.ts';
import { restoreLibrary } from '../../src/library/backup/restore-library.ts';
import { audioFile } from '../../src/library/folder-audio-store.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import type { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { readTake } from '../../src/library/read-take.ts';
import { runProgram, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { opened } from '../library/backup/filled-library.ts';
import { contents, filledLibrary, findings, plainSentence } from './kept-library.ts';

const pageBytes = 4096;

describe('a damaged page of the tables', () => {
  it('is found, told, never copied over a sound backup, and gone after a restore, whichever page it is', async () => {
    const folder = temporaryFolder();
    const [library, backup] = [await filledLibrary(folder), join(folder, 'backup')];
    await opened(library, (one) => backUpLibrary(one, backup));
    const before = await contents(library);
    const tables = join(library, 'takes.sqlite');
    const sound = readFileSync(tables);
    let hurt = 0;
    // The first page says that it is a database at all; without it the folder is none (below).
    for (let page = 1; page < sound.length / pageBytes; page += 4) {
      const bytes = Buffer.from(sound);
      bytes.fill(0xa5, page * pageBytes, (page + 1) * pageBytes);
      for (const end of ['-wal', '-shm']) rmSync(tables + end, { force: true });
      writeFileSync(tables, bytes);

      const found = await findings(library);
      if (found.length > 0) hurt++;
      for (const code of found)
        expect(['tables-damaged', 'rows-unconnected', 'recordings-unused', 'result-unreadable']).toContain(
          code,
        );
      await onlyFaults(async (one) => {
        for (const { id } of (await listTakes(one.db)).takes) await readTake(one.db, id);
      }, library);
      await onlyFaults((one) => backUpLibrary(one, backup), library);
      expect(await findings(backup), `page ${page}`).toEqual([]);

      await restoreLibrary(backupSource(backup), library, { replace: true });
      expect(await findings(library), `page ${page}`).toEqual([]);
    }
    expect(hurt).toBeGreaterThan(5);
    expect(await contents(library)).toEqual(before);
  });

  it('is told in a sentence, with what to do', async () => {
    const folder = temporaryFolder();
    const library = await filledLibrary(folder);
    const tables = join(library, 'takes.sqlite');
    const sound = readFileSync(tables);
    for (const [from, to] of [
      [pageBytes, sound.length],
      [0, 100],
    ] as const) {
      const bytes = Buffer.from(sound);
      bytes.fill(0xa5, from, to);
      writeFileSync(tables, bytes);
      const { status, stdout, stderr } = runProgram(['takes', '--library', library]);
      expect([status, stdout, stderr]).toEqual([1, '', expect.stringMatching(plainSentence)]);
      expect(readFileSync(tables).equals(bytes)).toBe(true);
    }
  });
});

/** What can't be done with a damaged library is refused with one of the library's own faults. */
async function onlyFaults(
  work: (library: Awaited<ReturnType<typeof openFolderLibrary>>) => Promise<unknown>,
  folder: string,
): Promise<void> {
  try {
    await opened(folder, work);
  } catch (error) {
    expect(error).toMatchObject({ name: 'LibraryFault' });
    expect(['library-damaged', 'backup-damaged', 'result-unreadable']).toContain(
      (error as { code: string }).code,
    );
  }
}

describe('a damaged recording', () => {
  it('in the library is found, and neither graded anew nor passed on as if it were whole', () => {
    const folder = temporaryFolder();
    const library = join(folder, 'library');
    const run = (...args: string[]) => runProgram([...args, '--library', library], { folder });
    const take = [sampleTakePath('accent-one'), '--sheet', sampleSheetPath('accent-one')];
    run('grade', ...take, '--player', 'Mirelle');
    const before = run('takes', 'show', 'newest', '--json').stdout;
    const path = audioFile(library, JSON.parse(before).recording.sha256);
    const bytes = readFileSync(path);
    bytes.fill(0, 100_000, 200_000);
    writeFileSync(path, bytes);

    expect(run('library', 'check')).toMatchObject({
      status: 1,
      stdout: expect.stringContaining('is damaged'),
    });
    for (const work of [
      ['takes', 'regrade', 'newest'],
      ['takes', 'export', 'newest', '--to', 'a.take.zip'],
    ]) {
      const { status, stdout, stderr } = run(...work);
      expect([work[1], status, stderr]).toEqual([work[1], 1, expect.stringContaining('damaged')]);
      expect(stdout).not.toContain('1 of 1');
    }
    expect(run('takes', 'show', 'newest', '--json').stdout).toBe(before);
  });

  it('is all that a take with a damaged result is made whole from', async () => {
    const folder = temporaryFolder();
    const run = (...args: string[]) => runProgram([...args, '--library', folder]);
    const take = [sampleTakePath('accent-one'), '--sheet', sampleSheetPath('accent-one')];
    run('grade', ...take, '--player', 'Mirelle');
    const before = run('takes', 'show', 'newest', '--json').stdout;
    await opened(folder, ({ db }) =>
      db
        .updateTable('takeResult')
        .set({ json: new Uint8Array([1, 2, 3]) })
        .execute(),
    );
    expect(await findings(folder)).toEqual(['result-unreadable']);
    const { status, stderr } = run('takes', 'regrade', 'newest');
    expect([status, stderr]).toEqual([0, expect.stringContaining('could not be read')]);
    expect(run('takes', 'show', 'newest', '--json').stdout).toBe(before);
  });

  it('that breaks off is graded as far as it goes, and one whose beginning is gone is refused', () => {
    const folder = temporaryFolder();
    const sheet = ['--sheet', sampleSheetPath('accent-one')];
    writeFileSync(join(folder, 'cut.wav'), readFileSync(sampleTakePath('accent-one')));
    truncateSync(join(folder, 'cut.wav'), 250_000);
    const cut = runProgram(['grade', 'cut.wav', ...sheet, '--json'], { folder });
    expect(cut.status).toBe(0);
    expect(JSON.parse(cut.stdout).warnings).toContainEqual(
      expect.objectContaining({ code: 'part-not-played' }),
    );
    const bytes = readFileSync(sampleTakePath('accent-one'));
    writeFileSync(join(folder, 'headless.wav'), bytes.fill(0, 0, 64));
    const headless = runProgram(['grade', 'headless.wav', ...sheet], { folder });
    expect([headless.status, headless.stderr]).toEqual([3, expect.stringMatching(plainSentence)]);
  });
});

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { archiveLibrary } from '../../../src/library/backup/archive-library.ts';
import { withArchive } from '../../../src/library/backup/archive-source.ts';
import { restoreLibrary } from '../../../src/library/backup/restore-library.ts';
import { tarEnd, tarEntries, tarHeader, tarPadding } from '../../../src/library/backup/tar-archive.ts';
import { everything, fill, inFolders, opened } from './filled-library.ts';

/** Where the files of an archive lie. */
async function entriesOf(file: string) {
  const handle = await open(file);
  try {
    return await tarEntries(handle);
  } finally {
    await handle.close();
  }
}

const taken = (file: string, folder: string) =>
  withArchive(file, folder, (source) => restoreLibrary(source, folder));

describe('an archive of a library', () => {
  it('makes the same library elsewhere, and leaves nothing else there', () =>
    inFolders(async (folder) => {
      const [own, place, file] = [
        join(folder, 'own'),
        join(folder, 'place'),
        join(folder, 'all.library.tar'),
      ];
      const before = await opened(own, async (library) => {
        await fill(library);
        expect(await archiveLibrary(library, file)).toMatchObject({ takes: 3, recordings: 3, lacking: [] });
        return everything(library);
      });
      expect(await taken(file, place)).toMatchObject({ takes: 3, recordings: 3 });
      await opened(place, async (library) => expect(await everything(library)).toEqual(before));
      expect(readdirSync(place).toSorted()).toEqual(['audio', 'takes.sqlite']);
      expect(readdirSync(folder).toSorted()).toEqual(['all.library.tar', 'own', 'place']);
    }));

  // POSIX.1-1988 says what a tar archive is; the system's own tar reads it and writes one that is read here.
  it('is one for other programs, and one that they pack again is read', () =>
    inFolders(async (folder) => {
      const [own, place, file] = [join(folder, 'own'), join(folder, 'place'), join(folder, 'all.tar')];
      await opened(own, async (library) => {
        await fill(library);
        await archiveLibrary(library, file);
      });
      const unpacked = join(folder, 'unpacked');
      mkdirSync(unpacked);
      execFileSync('tar', ['-xf', file, '-C', unpacked]);
      for (const hash of readdirSync(join(unpacked, 'audio')))
        expect(
          createHash('sha256')
            .update(readFileSync(join(unpacked, 'audio', hash)))
            .digest('hex'),
        ).toBe(hash);
      const names = execFileSync('tar', ['-tf', file], { encoding: 'utf8' }).trim().split('\n');
      const again = join(folder, 'again.tar');
      execFileSync('tar', ['-cf', again, '--format=ustar', '-C', unpacked, ...names.toReversed()]);
      expect(await taken(again, place)).toMatchObject({ takes: 3, recordings: 3 });
    }));

  it('that is damaged, cut off or something else changes nothing', () =>
    inFolders(async (folder) => {
      const [own, place, file] = [join(folder, 'own'), join(folder, 'place'), join(folder, 'all.tar')];
      await opened(own, async (library) => {
        await fill(library, 2);
        await archiveLibrary(library, file);
      });
      const whole = readFileSync(file);
      const hash = /audio\/[0-9a-f]{64}/.exec(whole.toString('latin1'))!;
      const changes: [string, (bytes: Buffer) => Buffer][] = [
        ['archive-unreadable', (bytes) => bytes.subarray(0, bytes.length - 1024)],
        ['archive-unreadable', (bytes) => bytes.subarray(0, bytes.length / 2)],
        ['archive-unreadable', () => Buffer.from('RIFF')],
        ['archive-unreadable', (bytes) => bytes.fill('x', 0, 4)],
        ['backup-incomplete', (bytes) => bytes.fill('x', hash.index + 600, hash.index + 604)],
      ];
      for (const [code, change] of changes) {
        writeFileSync(file, change(Buffer.from(whole)));
        await expect(taken(file, place)).rejects.toEqual(expect.objectContaining({ code }));
      }
      await opened(place, async (library) => {
        expect((await everything(library)).take).toEqual([]);
        expect(await library.audio.list()).toEqual([]);
      });
    }));

  it('says the SHA-256 of its tables (FIPS 180-4), as another program finds it', () =>
    inFolders(async (folder) => {
      const file = join(folder, 'all.tar');
      await opened(join(folder, 'own'), async (library) => {
        await fill(library, 1);
        await archiveLibrary(library, file);
      });
      const about = JSON.parse(execFileSync('tar', ['-xOf', file, 'library.json'], { encoding: 'utf8' }));
      execFileSync('tar', ['-xf', file, '-C', folder, 'takes.sqlite']);
      const found = execFileSync('sha256sum', [join(folder, 'takes.sqlite')], { encoding: 'utf8' });
      expect(about).toMatchObject({ version: 2, tablesSha256: found.slice(0, 64) });
    }));

  it('with a single bit of its tables turned is refused in one sentence, wherever the bit is', () =>
    inFolders(async (folder) => {
      const [place, file] = [join(folder, 'place'), join(folder, 'all.tar')];
      await opened(join(folder, 'own'), async (library) => {
        await fill(library, 2);
        await archiveLibrary(library, file);
      });
      const whole = readFileSync(file);
      const { from, size } = (await entriesOf(file)).get('takes.sqlite')!;
      for (let i = 0; i < 40; i++) {
        const bytes = Buffer.from(whole);
        bytes[from + Math.floor((i / 40) * size) + i]! ^= 1 << (i % 8);
        writeFileSync(file, bytes);
        await expect(taken(file, place)).rejects.toMatchObject({
          code: 'archive-unreadable',
          facts: { reason: 'its tables are not those that were written into it' },
        });
      }
      writeFileSync(file, whole);
      expect(await taken(file, place)).toMatchObject({ takes: 2 });
    }));

  it('of the first version, which said no hash, comes in; a later one without it does not', () =>
    inFolders(async (folder) => {
      const file = join(folder, 'all.tar');
      await opened(join(folder, 'own'), async (library) => {
        await fill(library, 2);
        await archiveLibrary(library, file);
      });
      const whole = readFileSync(file);
      const files = [...(await entriesOf(file)).values()].filter(({ name }) => name !== 'library.json');
      const without = (version: number) => {
        const about = Buffer.from(JSON.stringify({ format: 'evenhand-library', version, takes: 2 }));
        const parts = [{ name: 'library.json', bytes: about }].concat(
          files.map(({ name, from, size }) => ({ name, bytes: whole.subarray(from, from + size) })),
        );
        return Buffer.concat([
          ...parts.flatMap(({ name, bytes }) => [
            tarHeader(name, bytes.length, 0),
            bytes,
            tarPadding(bytes.length),
          ]),
          tarEnd(),
        ]);
      };
      writeFileSync(file, without(2));
      await expect(taken(file, join(folder, 'second'))).rejects.toMatchObject({ code: 'archive-unreadable' });
      writeFileSync(file, without(1));
      expect(await taken(file, join(folder, 'first'))).toMatchObject({ takes: 2, recordings: 2 });
    }));
});

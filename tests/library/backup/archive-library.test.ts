import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { archiveLibrary } from '../../../src/library/backup/archive-library.ts';
import { withArchive } from '../../../src/library/backup/archive-source.ts';
import { restoreLibrary } from '../../../src/library/backup/restore-library.ts';
import { everything, fill, inFolders, opened } from './filled-library.ts';

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
});

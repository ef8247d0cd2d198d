import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repository, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { contents, filledLibrary, findings, plainSentence } from './kept-library.ts';
import { describeMounted, withOwnMounts } from './own-mounts.ts';

const program = `${JSON.stringify(process.execPath)} ${JSON.stringify(join(repository, 'dist/main.js'))}`;
const take = `${JSON.stringify(sampleTakePath('accent-one'))} --sheet ${JSON.stringify(sampleSheetPath('accent-one'))}`;

/** Works that fill a disk on which `library` lies already, and what must be told of each. */
const works: readonly (readonly [string, string])[] = [
  ['a take that is kept', `grade ${take} --player Mirelle --library disk/library`],
  ['takes that are taken in', 'takes import all.take.zip --library disk/library'],
  ['a backup', 'library backup disk/backup --library other'],
  ['an archive', 'library export disk/all.library.tar --library other'],
  ['a backup brought back', 'library restore other --library disk/library --replace'],
];

describeMounted('a disk that is full', () => {
  it.each(works)('takes nothing half, and the library on it stays what it was: %s', async (_, work) => {
    const folder = temporaryFolder();
    const before = await contents(await filledLibrary(folder));
    await filledLibrary(folder, 'other', 900_000);
    mkdirSync(join(folder, 'disk'));
    // Room for the library itself and its log, and for less than one more recording.
    const { status, stderr, stdout } = withOwnMounts(
      `${program} takes export newest --to all.take.zip --library other > /dev/null 2> /dev/null
       mount -t tmpfs -o size=1100k none disk
       cp -r library disk/library
       head -c 400000 /dev/zero > disk/letters
       ${program} ${work} > told || echo "ended with $?"
       rm disk/letters
       rm -rf library && cp -r disk/library library
       find disk -name '*.tar' -o -name 'takes.sqlite' -path '*backup*'`,
      folder,
    );
    expect(stderr).toMatch(plainSentence);
    expect(stderr).toContain('no room left');
    expect([status, stdout]).toEqual([0, 'ended with 1\n']);
    expect(await contents(join(folder, 'library'))).toEqual(before);
    expect((await findings(join(folder, 'library'))).filter((code) => code !== 'recordings-unused')).toEqual(
      [],
    );
  });

  it("takes a library's first table or says that it has no room for it", () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'disk'));
    for (const size of ['16k', '128k']) {
      const { stderr, stdout } = withOwnMounts(
        `mount -t tmpfs -o size=${size} none disk
         ${program} players add Mirelle --library disk/new || echo "ended with $?"
         mount -o remount,size=8m disk
         ${program} players add Tomas --library disk/new
         ${program} players --library disk/new`,
        folder,
      );
      expect(stdout, size).toContain('Tomas');
      if (stdout.includes('ended with 1')) expect(stderr, size).toMatch(plainSentence);
      else expect(stdout, size).toMatch(/Mirelle +0 takes/);
    }
  });
});

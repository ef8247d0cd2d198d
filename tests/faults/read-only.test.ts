import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repository, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { contents, filledLibrary, plainSentence } from './kept-library.ts';
import { describeMounted, withOwnMounts } from './own-mounts.ts';

const program = `${JSON.stringify(process.execPath)} ${JSON.stringify(join(repository, 'dist/main.js'))}`;
const take = `${JSON.stringify(sampleTakePath('accent-one'))} --sheet ${JSON.stringify(sampleSheetPath('accent-one'))}`;
const closed = 'mount --bind library library && mount -o remount,ro,bind library';

describeMounted('a library that may only be read', () => {
  it('shows, checks and gives away what it holds', async () => {
    const folder = temporaryFolder();
    const before = await contents(await filledLibrary(folder));
    const { status, stdout, stderr } = withOwnMounts(
      `${closed}
       ${program} takes --library library
       ${program} takes export newest --to newest.take.zip --library library 2> /dev/null
       ${program} library check --library library
       ${program} library backup backup --library library
       ${program} library restore library --library restored`,
      folder,
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout.match(/Mirelle/g)).toHaveLength(3);
    expect(stdout).toContain('Everything is as it was kept.');
    for (const place of ['library', 'backup', 'restored'])
      expect(await contents(join(folder, place)), place).toEqual(before);
    expect(readFileSync(join(folder, 'newest.take.zip')).subarray(0, 2).toString()).toBe('PK');
  });

  it('is not changed, and says so', async () => {
    const works = [
      `grade ${take} --player Mirelle --library library`,
      'takes remark newest "Left waits" --library library',
      'takes delete newest --yes --library library',
      'players add Tomas --library library',
      'library restore other --replace --library library',
      'library backup library --library other',
      'players add Tomas --library library/new',
    ];
    const folder = temporaryFolder();
    const before = await contents(await filledLibrary(folder));
    cpSync(join(folder, 'library'), join(folder, 'other'), { recursive: true });
    const runs = works.map((work) => `${program} ${work} > told || echo "ended with $?"`);
    const { status, stdout, stderr } = withOwnMounts([closed, ...runs].join('\n'), folder);
    expect([status, stdout]).toEqual([0, 'ended with 1\n'.repeat(works.length)]);
    const sentences = stderr.split(/(?<=\n)/);
    expect(sentences).toHaveLength(works.length);
    for (const sentence of sentences) {
      expect(sentence).toMatch(plainSentence);
      expect(sentence).toMatch(/^Nothing may be written into "library/);
    }
    expect(await contents(join(folder, 'library'))).toEqual(before);
  });
});

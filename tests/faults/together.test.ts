import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { listTakes } from '../../src/library/list-takes.ts';
import { repository, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { opened } from '../library/backup/filled-library.ts';
import { findings, plainSentence } from './kept-library.ts';

function running(args: readonly string[], folder: string): Promise<{ status: number | null; told: string }> {
  const child = spawn(process.execPath, [join(repository, 'dist/main.js'), ...args], { cwd: folder });
  let told = '';
  child.stderr.on('data', (text) => {
    told += text;
  });
  child.stdout.resume();
  return new Promise((resolve) => child.on('close', (status) => resolve({ status, told })));
}

it('programs that grade, back up and delete in one library at once lose nothing of each other', async () => {
  const folder = temporaryFolder();
  const library = ['--library', 'library'];
  const keep = (name: string, player: string) => {
    const take = [sampleTakePath(name), '--sheet', sampleSheetPath(name)];
    return running(['grade', ...take, '--player', player, ...library], folder);
  };
  // All of them make the library, and three of them add the same player.
  const kept = await Promise.all([
    keep('accent-one', 'Mirelle'),
    keep('accent-two', 'Mirelle'),
    keep('accent-three', 'mirelle'),
    keep('accent-one', 'Mirelle'),
  ]);
  for (const { status, told } of kept) {
    expect([status, told]).toEqual([0, expect.stringMatching(/^(Kept as|It is kept already, as) take /)]);
  }
  const [deleted, backedUp, more] = await Promise.all([
    running(['takes', 'delete', 'newest', '--yes', ...library], folder),
    running(['library', 'backup', 'backup', ...library], folder),
    keep('third-repeat', 'Tomas'),
  ]);
  for (const { status, told } of [deleted, backedUp, more]) {
    if (status !== 0) expect(told).toMatch(plainSentence);
    expect([told, status]).toEqual([told, 0]);
  }
  const takes = await opened(join(folder, 'library'), async ({ db }) => (await listTakes(db)).takes);
  expect(takes).toHaveLength(3);
  for (const place of ['library', 'backup']) {
    const found = (await findings(join(folder, place))).filter((code) => code !== 'recordings-unused');
    expect(found, place).toEqual([]);
  }
});

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CompiledQuery } from 'kysely';
import { expect, it } from 'vitest';
import { clearUnreferencedAudio } from '../../src/library/delete-audio.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import { type FolderLibrary, openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { readAudio, readTake } from '../../src/library/read-take.ts';
import { sha256Hex } from '../../src/library/sha256-hex.ts';
import { madeAudio, madeTake } from './made-take.ts';

const program = join(import.meta.dirname, 'keep-many.ts');

/** Runs the program that keeps takes; gives the numbers that it said were kept, before it ended or was killed. */
function keepMany(folder: string, from: number, count: number, killAfterMs?: number): Promise<number[]> {
  const child = spawn(process.execPath, ['--import', 'tsx', program, folder, `${from}`, `${count}`], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said: string[] = [];
  child.stdout.on('data', (text) => {
    // Counted from the first take on: starting takes longer than keeping.
    if (said.length === 0 && killAfterMs !== undefined) setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    said.push(`${text}`);
  });
  return new Promise((resolve) => {
    child.on('close', () => resolve(said.join('').split('\n').filter(Boolean).map(Number)));
  });
}

async function expectWhole(library: FolderLibrary): Promise<number> {
  const check = await library.db.executeQuery(CompiledQuery.raw('pragma integrity_check'));
  expect(check.rows).toEqual([{ integrity_check: 'ok' }]);
  expect((await library.db.executeQuery(CompiledQuery.raw('pragma foreign_key_check'))).rows).toEqual([]);
  const { takes } = await listTakes(library.db, { limit: 200 });
  for (const { id, audioHash } of takes) {
    const opened = await readTake(library.db, id);
    expect(opened.take.lines).toHaveLength(2);
    expect(await sha256Hex((await readAudio(library, id))!)).toBe(audioHash);
  }
  return takes.length;
}

it('a program that is killed at any moment leaves whole takes only, and every one that it said was kept', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-crash-'));
  let kept = 0;
  for (const [round, killAfterMs] of [0, 7, 23, 61, 110].entries()) {
    const said = await keepMany(folder, round * 100, 100, killAfterMs);
    expect(said.length).toBeLessThan(100); // or it wasn't killed in its work
    const library = await openFolderLibrary(folder);
    const there = await expectWhole(library);
    expect(there - kept).toBeGreaterThanOrEqual(said.length);
    kept = there;
    await clearUnreferencedAudio(library);
    expect(await library.audio.list()).toHaveLength(there);
    for (const number of said) {
      const audio = { name: 'a.wav', bytes: madeAudio(number, 300_000) };
      expect((await keepTake(library, madeTake(number, { audio }))).outcome).toBe('already-there');
    }
    await library.close();
  }
  rmSync(folder, { recursive: true });
});

it('two programs keep takes in one library at the same time', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-two-'));
  const [one, two] = await Promise.all([keepMany(folder, 0, 12), keepMany(folder, 6, 12)]);
  expect([one.length, two.length]).toEqual([12, 12]);
  const library = await openFolderLibrary(folder);
  expect(await expectWhole(library)).toBe(18);
  await library.close();
  rmSync(folder, { recursive: true });
});

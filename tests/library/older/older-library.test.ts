import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { compareCommand } from '../../../src/cli/compare-command.ts';
import { lessonCommand } from '../../../src/cli/lesson-command.ts';
import { progressCommand } from '../../../src/cli/progress-command.ts';
import { takesCommand } from '../../../src/cli/takes-command.ts';
import { audioFile } from '../../../src/library/folder-audio-store.ts';
import { listTakes } from '../../../src/library/list-takes.ts';
import { openFolderLibrary } from '../../../src/library/open-folder-library.ts';
import { readTake } from '../../../src/library/read-take.ts';
import { runCommand } from '../../cli/run-command.ts';
import { temporaryFolder } from '../../formats/temporary-folder.ts';

const takes = join(import.meta.dirname, '../../../fixtures/takes');

/**
 * A library as an older program wrote it: the tables of the first schema with results that lack what came later
 * (findings of the recording, the rubric's points, breaking points), and the recordings they were made from.
 */
function olderLibrary(): string {
  const folder = temporaryFolder();
  const tables = readFileSync(join(import.meta.dirname, 'first-tables.sqlite.gz'));
  writeFileSync(join(folder, 'takes.sqlite'), gunzipSync(tables));
  const recordings = [
    ['accent-one', 'b5b486ad811478baffdc2eff9571dd0cd2abbbb036cfea2b462c72b89384a73d'],
    ['tempo-change', 'd4ed4205339210b24d3c4cf7336dcf34d612053fbed40e087f7762ea2e1432ad'],
  ] as const;
  for (const [name, hash] of recordings) {
    const path = audioFile(folder, hash);
    mkdirSync(dirname(path), { recursive: true });
    copyFileSync(join(takes, `${name}.wav`), path);
  }
  return folder;
}

async function givenWay(folder: string) {
  const library = await openFolderLibrary(folder);
  try {
    const rows = await library.db.selectFrom('take').select('endGaveWay').execute();
    return rows.map(({ endGaveWay }) => endGaveWay);
  } finally {
    await library.close();
  }
}

it('is listed, opened, compared, followed and prepared for a lesson as it is', async () => {
  const folder = olderLibrary();
  const library = await openFolderLibrary(folder);
  const listed = (await listTakes(library.db)).takes;
  expect(listed.map(({ day, score }) => [day, Math.round(score!)])).toEqual([
    ['2026-11-25', 91],
    ['2026-11-22', 98],
  ]);
  for (const { id } of listed) expect((await readTake(library.db, id)).result.grading.state).toBe('graded');
  await library.close();

  const here = ['--library', folder];
  const [second, first] = listed.map(({ id }) => id.slice(0, 8)) as [string, string];
  expect((await runCommand(takesCommand, ['show', first, ...here])).stdout).toMatch(/Overall +98/);
  expect((await runCommand(compareCommand, [first, second, ...here])).stdout).toContain('Accents above taps');
  expect((await runCommand(progressCommand, ['--player', 'Mirelle', ...here])).stdout).toContain(
    '2 times on 2 days.',
  );
  const lesson = await runCommand(lessonCommand, ['--since', '2026-11-21', ...here]);
  expect(lesson.stdout).toContain('Next: >RLR >LRL, stay at 144 BPM, weakest: tempo');
});

it('is graded again, and says then what older programs put down nowhere', async () => {
  const folder = olderLibrary();
  expect(await givenWay(folder)).toEqual([null, null]);
  const here = ['--library', folder];
  const again = await runCommand(takesCommand, ['regrade', '7ec22ca6', 'e34d57f8', ...here]);
  expect(again.stdout).toContain('2 of 2 graded again');
  expect(await givenWay(folder)).toEqual([0, 0]);
  const lesson = await runCommand(lessonCommand, ['--since', '2026-11-21', ...here]);
  expect(lesson.stdout).toContain('Next: >RLR >LRL, stay at 144 BPM, weakest: tempo');
});

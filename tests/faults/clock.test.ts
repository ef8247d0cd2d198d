import { spawnSync } from 'node:child_process';
import { copyFileSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { folderAudioStore } from '../../src/library/folder-audio-store.ts';
import { repository, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { findings } from './kept-library.ts';

/** Runs the program under a clock that stands at `now`. */
function runAt(now: string, args: readonly string[], folder: string) {
  const clock = `
    const [Whole, shift] = [Date, ${Date.parse(now)} - Date.now()];
    globalThis.Date = class extends Whole {
      constructor(...given) { given.length === 0 ? super(Whole.now() + shift) : super(...given); }
      static now() { return Whole.now() + shift; }
    };`;
  const hook = `--import=data:text/javascript,${encodeURIComponent(clock)}`;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(repository, 'dist/main.js'), ...args],
    {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, NODE_OPTIONS: hook, NO_COLOR: '1', TZ: 'UTC' },
    },
  );
  return { status, stdout, stderr };
}

it('takes are kept, found and told apart whatever the clock says', async () => {
  const folder = temporaryFolder();
  const library = ['--library', 'library'];
  const keep = (now: string, name: string, dated: string) => {
    copyFileSync(sampleTakePath(name), join(folder, `${name}.wav`));
    utimesSync(join(folder, `${name}.wav`), new Date(dated), new Date(dated));
    const sheet = ['--sheet', sampleSheetPath(name)];
    return runAt(now, ['grade', `${name}.wav`, ...sheet, '--player', 'Mirelle', ...library], folder);
  };
  // The clock is set back to where it stands on a device without a battery, and goes ahead again.
  expect(keep('2026-03-09T18:00Z', 'accent-one', '2026-03-09T17:30Z').status).toBe(0);
  expect(keep('1970-01-02T00:00Z', 'accent-three', '1970-01-01T00:00Z').status).toBe(0);
  const ahead = keep('2026-03-10T18:00Z', 'third-repeat', '2099-12-31T23:30Z');
  expect([ahead.status, ahead.stderr]).toEqual([
    0,
    expect.stringMatching(/Kept as .*\nIt counts for 2099-12-31, which is yet to come .* --day\.\n$/),
  ]);

  for (const now of ['1970-01-02T00:00Z', '2199-01-01T00:00Z']) {
    const { status, stdout } = runAt(now, ['takes', '--json', ...library], folder);
    const days = (JSON.parse(stdout) as { day: string }[]).map(({ day }) => day);
    expect([status, days]).toEqual([0, ['2099-12-31', '2026-03-09', '1970-01-01']]);
    const progress = runAt(now, ['progress', '--player', 'Mirelle', ...library], folder);
    expect([progress.status, progress.stderr]).toEqual([0, '']);
    expect(progress.stdout).not.toMatch(/NaN|Infinity|Invalid/);
  }
  expect(await findings(join(folder, 'library'))).toEqual([]);
});

it('what another program is writing is left alone when the clock went back meanwhile', async () => {
  const folder = temporaryFolder();
  const store = folderAudioStore(folder);
  await store.put('ab'.repeat(32), new Uint8Array(10));
  const [young, old] = [1, 2].map((digit) =>
    join(folder, 'ab', `.${`${digit}`.repeat(8)}-aaaa-aaaa-aaaa-aaaaaaaaaaaa.arriving`),
  );
  for (const path of [young!, old!]) writeFileSync(path, 'half');
  const inHours = (hours: number) => new Date(Date.now() + hours * 3_600_000);
  utimesSync(young!, inHours(5), inHours(5));
  utimesSync(old!, inHours(-5), inHours(-5));
  expect(await store.list()).toEqual(['ab'.repeat(32)]);
  expect(readdirSync(join(folder, 'ab')).toSorted()).toEqual([young!.split('/').at(-1), 'ab'.repeat(32)]);
});

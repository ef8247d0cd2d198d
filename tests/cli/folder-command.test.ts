import { spawn } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Schema from 'typebox/schema';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { type FolderResult, folderResultSchema } from '../../src/report/folder/folder-result.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { repository, runProgram, sampleSheetPath, sampleTakePath } from './built-program.ts';

/** A folder with these sample takes, each with its sheet. */
function folderOf(names: Readonly<Record<string, string>>): string {
  const folder = temporaryFolder();
  for (const [as, name] of Object.entries(names)) {
    mkdirSync(join(folder, as, '..'), { recursive: true });
    copyFileSync(sampleTakePath(name), join(folder, `${as}.wav`));
    copyFileSync(sampleSheetPath(name), join(folder, `${as}.sheet`));
  }
  return folder;
}

const filesIn = (folder: string) =>
  (readdirSync(folder, { recursive: true }) as string[]).map((file) => file.replaceAll('\\', '/')).sort();

function summary(folder: string): FolderResult {
  const { stdout } = runProgram(['folder', '.', '--report-folder', 'reports', '--no-sound', '--json'], {
    folder,
  });
  const result: unknown = JSON.parse(stdout);
  expect(Schema.Check(folderResultSchema, result)).toBe(true);
  return result as FolderResult;
}

describe('folder', () => {
  it('grades what can be graded, tells what is wrong with the rest and ends with the worst of it', () => {
    const folder = folderOf({ 'take 2': 'sloppy', 'anna/take 10': 'accent-one' });
    writeFileSync(join(folder, 'notes.wav'), 'Bring the thin sticks.');
    copyFileSync(join(folder, 'take 2.sheet'), join(folder, 'notes.sheet'));
    copyFileSync(sampleTakePath('accent-two'), join(folder, 'alone.wav'));
    const silence = writeWav({ channels: [new Float32Array(48000)], sampleRate: 48000, depth: 'int16' });
    writeFileSync(join(folder, 'silent.wav'), silence);
    copyFileSync(join(folder, 'take 2.sheet'), join(folder, 'silent.sheet'));
    const { status, stdout, stderr } = runProgram(
      ['folder', '.', '--report-folder', 'all/reports', '--json', 'sum.json'],
      { folder },
    );
    expect(status).toBe(3);
    const text = stdout.replace(/\s+/g, ' ');
    expect(text).toMatch(/anna\/take 10\.wav 0:08 9\d secure Accent on one/);
    expect(text).toMatch(/take 2\.wav 0:08 7\d nearly there Accent on one not yet: Evenness/);
    expect(text).toContain('– no grade');
    expect(text).toContain('"notes.wav" is a text file');
    expect(text).toContain('Put a sheet "alone.sheet" beside it');
    expect(text).toContain('5 recordings: 2 graded, 1 could not be graded, 2 could not be read.');
    expect(stderr).toContain('index.html');

    const reports = join(folder, 'all/reports');
    expect(filesIn(reports).filter((file) => /\.(html|json)$/.test(file) && !file.startsWith('.'))).toEqual(
      ['anna/take 10', 'index', 'silent', 'take 2']
        .flatMap((name) => (name === 'index' ? ['index.html'] : [`${name}.html`, `${name}.json`]))
        .sort(),
    );
    const page = readFileSync(join(reports, 'index.html'), 'utf8');
    const links = [...page.matchAll(/href="([^"#]+)"/g)].map(([, link]) => decodeURIComponent(link!));
    expect(links.sort()).toEqual(['anna/take 10.html', 'silent.html', 'take 2.html']);
    for (const link of links) expect(existsSync(join(reports, link))).toBe(true);
    expect(readFileSync(join(reports, 'take 2.html'), 'utf8')).toContain('data:audio/mpeg');
    expect(JSON.parse(readFileSync(join(folder, 'sum.json'), 'utf8')).counts).toEqual({
      ...{ graded: 2, notGradable: 1, unreadable: 2, failed: 0, earlier: 0 },
    });

    // The same figures as when the take is graded alone.
    const alone = runProgram(['grade', 'take 2.wav', '--sheet', 'take 2.sheet', '--json'], { folder });
    const inFolder = validateTakeResult(JSON.parse(readFileSync(join(reports, 'take 2.json'), 'utf8')));
    expect(inFolder).toEqual(JSON.parse(alone.stdout));
  }, 120_000);

  it('grades again what has changed, and nothing else', () => {
    const folder = folderOf({ a: 'accent-one', b: 'accent-two', c: 'accent-three' });
    const earlier = ({ takes }: FolderResult) => takes.map((take) => take.earlier);
    const first = summary(folder);
    expect(earlier(first)).toEqual([false, false, false]);
    // A remark changes nothing that is asked; another tempo does.
    writeFileSync(join(folder, 'a.sheet'), `# louder!\n${readFileSync(join(folder, 'a.sheet'), 'utf8')}`);
    copyFileSync(sampleTakePath('sloppy'), join(folder, 'b.wav'));
    rmSync(join(folder, 'reports/c.html'));
    const second = summary(folder);
    expect(earlier(second)).toEqual([true, false, false]);
    expect(second.takes[0]).toEqual({ ...first.takes[0], earlier: true });
    expect(second.takes[1]!.figures).not.toEqual(first.takes[1]!.figures);
    expect(second.takes[2]).toEqual(first.takes[2]);
    expect(existsSync(join(folder, 'reports/c.html'))).toBe(true);

    // An older program left its note, or half a note.
    const [a, b] = ['a', 'b'].map((name) => join(folder, `reports/.graded/${name}.json`)) as [string, string];
    writeFileSync(a, readFileSync(a, 'utf8').replace(/"program":"[^"]+"/, '"program":"0.0.1"'));
    writeFileSync(b, readFileSync(b, 'utf8').slice(0, 300));
    expect(earlier(summary(folder))).toEqual([false, false, true]);
  }, 120_000);

  it.each(['SIGKILL', 'SIGINT'] as const)(
    'leaves only whole files behind %s, and goes on from there',
    async (signal) => {
      const names = Object.fromEntries([...'abcde'].map((name) => [name, 'accent-one']));
      const folder = folderOf(names);
      const args = ['folder', '.', '--report-folder', 'reports', '--no-sound', '--at-once', '2'];
      const program = spawn(process.execPath, [join(repository, 'dist/main.js'), ...args], { cwd: folder });
      const ended = new Promise((resolve) => program.on('exit', (_, by) => resolve(by)));
      let told = '';
      program.stderr.on('data', (text: Buffer) => {
        told += String(text);
      });
      const reports = join(folder, 'reports');
      const noted = () => (existsSync(join(reports, '.graded')) ? readdirSync(join(reports, '.graded')) : []);
      while (noted().filter((name) => name.endsWith('.json')).length < 2) await wait(5);
      program.kill(signal);
      expect(await ended).toBe(signal);
      if (signal === 'SIGINT')
        expect(told).toMatch(/^Stopped: [2-4] of 5 takes are done\. The same command goes on/);

      const whole = filesIn(reports).filter((file) => !/(^|\/)\.[^/]*\.tmp$/.test(file));
      for (const file of whole.filter((name) => name.endsWith('.json')))
        expect(() => JSON.parse(readFileSync(join(reports, file), 'utf8'))).not.toThrow();
      for (const file of whole.filter((name) => name.endsWith('.html')))
        expect(readFileSync(join(reports, file), 'utf8')).toMatch(/<\/html>\n$/);
      const done = whole.filter((file) => /^\.graded\/.*json$/.test(file)).length;
      expect(done).toBeLessThan(5);
      const { counts } = summary(folder);
      expect(counts).toMatchObject({ graded: 5, earlier: done });
    },
    60_000,
  );

  it('refuses a folder without recordings, one that is missing, and a wrong number', () => {
    const folder = temporaryFolder();
    const run = (...args: string[]) => runProgram(['folder', ...args], { folder });
    expect(run('.')).toMatchObject({ status: 3, stderr: expect.stringContaining('no recordings in "."') });
    expect(run('nowhere')).toMatchObject({ status: 3, stderr: expect.stringContaining('"nowhere"') });
    expect(run('.', '--at-once', '0')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('1 to 32'),
    });
    expect(run()).toMatchObject({ status: 2 });
  });
});

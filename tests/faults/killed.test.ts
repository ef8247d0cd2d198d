import { spawn } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { CompiledQuery } from 'kysely';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { migrateLibrary } from '../../src/library/migrate-library.ts';
import { migrations } from '../../src/library/migrations/index.ts';
import { repository, runProgram, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { everything, opened } from '../library/backup/filled-library.ts';
import { filledLibrary, findings } from './kept-library.ts';
import { laterSteps } from './migrate-on.ts';

/** Killing a program, which leaves it no moment to clean up; what it wrote by then is on the disk as it is. */
const hard = 'SIGKILL';

interface Run {
  readonly args: readonly string[];
  readonly folder: string;
  /** What it has done by the time it is killed. */
  readonly once: () => boolean;
}

/** Whether the program was killed before it ended by itself. */
function killed({ args, folder, once }: Run): Promise<boolean> {
  const child = spawn(process.execPath, args, { cwd: folder, stdio: 'ignore' });
  const watch = setInterval(() => once() && child.kill(hard), 1);
  return new Promise((resolve) =>
    child.on('close', (_, signal) => {
      clearInterval(watch);
      resolve(signal === hard);
    }),
  );
}

/** Names of all files below a folder; none where it isn't there. */
const filesIn = (folder: string): readonly string[] =>
  existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [];

const main = join(repository, 'dist/main.js');

describe('a program that is killed', () => {
  it('while it grades, leaves whole files or none, and a take that is kept whole or not at all', async () => {
    const folder = temporaryFolder();
    const grade = [
      ...['grade', sampleTakePath('accent-one'), '--sheet', sampleSheetPath('accent-one')],
      ...[
        '--json',
        'r.json',
        '--csv',
        'r.csv',
        '--report',
        'r.html',
        '--player',
        'Mirelle',
        '--library',
        'library',
      ],
    ];
    expect(runProgram(grade, { folder }).status).toBe(0);
    const outputs = ['r.json', 'r.csv', 'r.html'];
    const whole = outputs.map((name) => readFileSync(join(folder, name), 'utf8'));
    const there = (part: RegExp) => () => filesIn(folder).some((name) => part.test(name));
    const moments = [/\.tmp$/, /^r\.csv$/, /takes\.sqlite/, /arriving|[0-9a-f]{64}$/];
    let killings = 0;
    for (const moment of moments) {
      for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
      if (await killed({ args: [main, ...grade], folder, once: there(moment) })) killings++;
      for (const [index, name] of outputs.entries())
        if (existsSync(join(folder, name)))
          expect(readFileSync(join(folder, name), 'utf8'), `${name} at ${moment}`).toBe(whole[index]);
      const found = existsSync(join(folder, 'library')) ? await findings(join(folder, 'library')) : [];
      for (const code of found) expect(code).toBe('recordings-unused');
    }
    expect(killings).toBeGreaterThan(1);
    expect(runProgram(grade, { folder }).status).toBe(0);
    validateTakeResult(JSON.parse(readFileSync(join(folder, 'r.json'), 'utf8')));
    expect(await findings(join(folder, 'library'))).toEqual([]);
    expect(runProgram(['takes', '--library', 'library'], { folder }).stdout.match(/Mirelle/g)).toHaveLength(
      1,
    );
  });

  it('while it takes takes in, has whole ones, and the rest come the next time', async () => {
    const folder = temporaryFolder();
    await filledLibrary(folder, 'here', 3_000_000);
    const [here, there] = [
      ['--library', 'here'],
      ['--library', 'there'],
    ];
    const names = JSON.parse(runProgram(['takes', '--json', ...here], { folder }).stdout) as { id: string }[];
    runProgram(['takes', 'export', ...names.map(({ id }) => id), '--to', 'all.take.zip', ...here], {
      folder,
    });
    const take = ['takes', 'import', 'all.take.zip', ...there];
    let killings = 0;
    for (const recordings of [0, 1, 2]) {
      rmSync(join(folder, 'there'), { recursive: true, force: true });
      const kept = () => filesIn(join(folder, 'there')).filter((name) => /[0-9a-f]{64}$/.test(name)).length;
      const once = () => existsSync(join(folder, 'there')) && kept() >= recordings;
      if (await killed({ args: [main, ...take], folder, once })) killings++;
      const found = existsSync(join(folder, 'there')) ? await findings(join(folder, 'there')) : [];
      for (const code of found) expect(code).toBe('recordings-unused');
      const { status, stdout } = runProgram(take, { folder });
      const [anew, already] = stdout.match(/\d+/g)!.map(Number);
      expect([status, anew! + already!]).toEqual([0, 4]);
      expect(await findings(join(folder, 'there'))).toEqual([]);
    }
    expect(killings).toBeGreaterThan(0);
  });

  it('while it brings an old library up to date, has taken each step whole or not at all', async () => {
    const folder = temporaryFolder();
    const old = await filledLibrary(folder);
    const { take } = await opened(old, everything);
    const program = join(import.meta.dirname, 'migrate-on.ts');
    let between = 0;
    // The log grows while a step is taken, and what it holds is the step once that is whole.
    for (const logBytes of [1, 2_000_000, 7_000_000]) {
      const place = join(folder, `${logBytes}`);
      cpSync(old, place, { recursive: true });
      const log = join(place, 'takes.sqlite-wal');
      const once = () => (statSync(log, { throwIfNoEntry: false })?.size ?? 0) >= logBytes;
      await killed({ args: ['--import', 'tsx', program, place], folder: repository, once });
      await expectStepsWhole(place, (steps) => {
        if (steps < laterSteps.length) between++;
      });
      const rows = (await openedLater(place, everything)).take as object[];
      expect(rows).toEqual(
        (take as object[]).map((row) => ({ ...row, later1: 'x', later2: 'x', later3: 'x' })),
      );
    }
    expect(between).toBeGreaterThan(0);
  });
});

const later = [...migrations, ...laterSteps];

/** The version says which steps were taken: their tables are full, and of the others nothing is there. */
async function expectStepsWhole(place: string, tell: (steps: number) => void): Promise<void> {
  const { default: Database } = await import('better-sqlite3');
  const database = new Database(join(place, 'takes.sqlite'));
  const steps = (database.pragma('user_version', { simple: true }) as number) - migrations.length;
  for (const [index] of laterSteps.entries()) {
    const count = database
      .prepare(`select count(*) from sqlite_schema where name = 'later${index + 1}'`)
      .pluck()
      .get();
    expect(count).toBe(index < steps ? 1 : 0);
    if (index < steps)
      expect(
        database
          .prepare(`select count(*) from later${index + 1}`)
          .pluck()
          .get(),
      ).toBe(60_000);
  }
  database.close();
  tell(steps);
}

/** Opens a library as the later program would, which goes on where the killed one stopped. */
async function openedLater<T>(
  place: string,
  work: (library: Parameters<typeof everything>[0]) => Promise<T>,
) {
  const { default: Database } = await import('better-sqlite3');
  const { Kysely } = await import('kysely');
  const { sqliteDialect } = await import('../../src/library/sqlite-dialect.ts');
  const { betterSqliteDatabase } = await import('../../src/library/better-sqlite-database.ts');
  const database = new Database(join(place, 'takes.sqlite'));
  const db = new Kysely<never>({ dialect: sqliteDialect(betterSqliteDatabase(database, place)) });
  try {
    await migrateLibrary(db as never, later);
    expect((await db.executeQuery(CompiledQuery.raw('pragma integrity_check'))).rows).toEqual([
      { integrity_check: 'ok' },
    ]);
    return await work({ db } as never);
  } finally {
    database.close();
  }
}

import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { programVersion } from '../../src/library/program-version.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { builtLibrary as library } from './built-library.ts';
import { sampleTakePath } from './built-program.ts';

const nameOf = (listing: string, player: string) =>
  listing
    .split('\n')
    .find((line) => line.includes(player))!
    .slice(0, 8);

describe('takes in a library', () => {
  it('are kept under a player, listed, shown as they were graded, and kept once', () => {
    const { run, keep } = library();
    const first = keep('accent-one', 'Mirelle', '--day', '2026-03-09', '--pad', 'gum pad', '--tag', 'lesson');
    expect([first.status, first.stderr]).toEqual([0, expect.stringContaining('of Mirelle, a new player')]);
    expect(keep('accent-one', 'Mirelle').stderr).toContain('kept already');
    expect(keep('third-repeat', 'Tomas', '--day', '2026-03-10').status).toBe(0);

    const { stdout } = run('takes');
    expect(stdout.trim().split('\n')).toHaveLength(3);
    expect(stdout).toMatch(/2026-03-10 12:00 {2}Tomas/);
    expect(run('takes', '--player', 'mirelle').stdout).not.toContain('Tomas');
    expect(run('takes', '--since', '2026-03-10').stdout).not.toContain('Mirelle');
    expect(run('takes', '--tag', 'lesson').stdout).toContain('Mirelle');
    expect(run('takes', '--bpm', '140..150').stdout).toContain('Mirelle');
    expect(run('takes', '--bpm', '300').stderr).toContain('No take is kept that fits');
    expect(run('takes', '--bpm', '150..140').status).toBe(2);
    expect(run('takes', '--technique', 'wrist').stderr).toContain('No take is kept that fits');
    // Page by page, each named by the last one of the page before.
    const page = run('takes', '--limit', '1');
    expect(page.stdout).toContain('Tomas');
    const after = /--after ([0-9a-f]{8})/.exec(page.stderr)![1]!;
    const rest = run('takes', '--limit', '1', '--after', after);
    expect([rest.stdout, rest.stderr]).toEqual([expect.stringContaining('Mirelle'), '']);

    const shown = run('takes', 'show', nameOf(stdout, 'Mirelle'));
    expect(shown.stdout).toContain('gum pad');
    const graded = first.stdout.split('\n').filter((line) => line.includes('■'));
    expect(graded.length).toBeGreaterThan(3);
    for (const line of graded) expect(shown.stdout).toContain(line);
    const [again] = JSON.parse(run('takes', '--player', 'Mirelle', '--json').stdout);
    expect(again).toMatchObject({ personName: 'Mirelle', graded: true, day: '2026-03-09' });
  });

  it('travel as files to another library, remarks and all, and arrive once', () => {
    const [here, there] = [library(), library()];
    here.keep('accent-one', 'Mirelle');
    expect(
      here.run('takes', 'remark', 'newest', 'Left waits', '--at', '0:03.5', '--by', 'Ms Oduya').status,
    ).toBe(0);
    expect(here.run('takes', 'remark', 'newest', 'Late', '--at', '1:08').stderr).toMatch(
      /--at 1:08 lies behind the end: the take is 0:08\.\d long/,
    );
    const file = join(temporaryFolder(), 'a.take.zip');
    expect(here.run('takes', 'export', 'newest', '--to', file).status).toBe(0);
    expect(there.run('takes', 'import', file).stdout).toContain('1 taken in, 0 there already');
    expect(there.run('takes', 'import', file).stdout).toContain('0 taken in, 1 there already');
    expect(there.run('takes', 'show', 'newest').stdout).toContain('Remark at 0:03.5 by Ms Oduya: Left waits');
    expect(there.recordings()).toEqual(here.recordings());
    const damaged = there.run(
      'takes',
      'import',
      sampleTakePath('accent-one'),
      join(temporaryFolder(), 'none'),
    );
    expect([damaged.status, damaged.stdout]).toEqual([3, expect.stringContaining('2 not readable')]);
  });

  it('are noted anew: whose they are, pad and sticks, tags', () => {
    const { run, keep } = library();
    keep('accent-one', 'Mirelle', '--pad', 'gum pad', '--tag', 'lesson', 'slow');
    run('players', 'add', 'Tomas');
    const change = (...args: string[]) => run('takes', 'change', 'newest', ...args);
    expect(
      change('--sticks', 'hickory', '--tag', 'concert', '--untag', 'Lesson', '--player', 'Tomas').stdout,
    ).toBe('1 take changed.\n');
    const [take] = JSON.parse(run('takes', '--player', 'Tomas', '--json').stdout);
    expect(take).toMatchObject({ pad: 'gum pad', sticks: 'hickory', tags: ['concert', 'slow'] });
    change('--pad', '');
    expect(JSON.parse(run('takes', '--json').stdout)[0].pad).toBe('');
    for (const [args, words] of [
      [[], 'Nothing to change'],
      [['--player', 'Nobody'], 'no player "Nobody"'],
    ] as const) {
      const { status, stderr } = change(...args);
      expect(status).toBe(2);
      expect(stderr).toContain(words);
    }
  });

  it('are graded again from their recording, and not held against themselves', async () => {
    const { run, keep, folder } = library();
    keep('accent-one', 'Mirelle');
    const before = run('takes', 'show', 'newest', '--json').stdout;
    expect(run('takes', 'regrade', 'newest').stdout).toContain('1 of 1');
    expect(JSON.parse(run('takes', 'show', 'newest', '--json').stdout)).toEqual(JSON.parse(before));
    expect(run('takes', 'regrade', '--outdated').stdout).toContain('0 of 0');
    // Another build of this version graded it, or an older program that didn't tell its builds apart.
    for (const gradedWith of [`${programVersion}+000000000000`, programVersion]) {
      const kept = await openFolderLibrary(folder);
      await kept.db.updateTable('take').set({ gradedWith }).execute();
      await kept.close();
      expect(run('takes', 'regrade', '--outdated').stdout).toContain('1 of 1');
    }
    expect(run('takes', 'regrade', '--outdated').stdout).toContain('0 of 0');
    const same = run('compare', 'newest', 'newest');
    expect([same.status, same.stderr]).toEqual([2, expect.stringContaining('Both names are the same take')]);
  });

  it('are deleted for good, with their recording, and only when that is confirmed', () => {
    const { run, keep, recordings } = library();
    keep('accent-one', 'Mirelle');
    expect(run('takes', 'delete', 'newest')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('Nothing was deleted'),
    });
    expect(recordings()).toHaveLength(1);
    expect(run('takes', 'delete', 'newest', '--yes').status).toBe(0);
    expect(recordings()).toEqual([]);
    expect(run('takes').stderr).toContain('No take is kept');
  });
});

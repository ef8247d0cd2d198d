import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtLibrary as library } from './built-library.ts';

describe('players', () => {
  it('are noted: what there is to know of them, and as what they are here', () => {
    const { run } = library();
    run('players', 'add', 'Tomas');
    expect(run('players', 'change', 'Tomas', '--note', 'leads left', '--role', 'player').status).toBe(0);
    expect(run('players').stdout).toContain('leads left');
    expect(JSON.parse(run('players', '--json').stdout)[0]).toMatchObject({
      role: 'player',
      note: 'leads left',
    });
    expect(run('players', 'change', 'Tomas', '--role', 'cook').stderr).toContain('--role cook is unknown');
    expect(run('players', 'change', 'Tomas').status).toBe(2);
  });

  it('are renamed, merged and deleted, each once confirmed', () => {
    const { run, keep, recordings } = library();
    keep('accent-one', 'Mirele');
    keep('third-repeat', 'Mirelle');
    expect(run('players', 'merge', 'Mirele', 'Mirelle').status).toBe(2);
    expect(run('players', 'merge', 'Mirele', 'Mirelle', '--yes').status).toBe(0);
    expect(run('players').stdout).toMatch(/^Mirelle +2 takes/);
    expect(run('players', 'rename', 'Mirelle', 'Mirelle K.').status).toBe(0);
    expect(run('takes', '--player', 'Mirelle K')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('Did you mean "Mirelle K."?'),
    });
    expect(run('players', 'delete', 'Mirelle K.').status).toBe(2);
    expect(run('players', 'delete', 'Mirelle K.', '--yes').status).toBe(0);
    expect(recordings()).toEqual([]);
  });
});

describe('a library as a whole', () => {
  it('is backed up, restored and checked, and nothing is written over unasked', () => {
    const { folder, run, keep, recordings } = library();
    keep('accent-one', 'Mirelle');
    const backup = join(folder, '..', 'backup');
    expect(run('library', 'backup', backup).stdout).toContain('1 recording copied');
    run('takes', 'delete', 'newest', '--yes');
    expect(run('library', 'restore', backup)).toMatchObject({
      status: 1,
      stderr: expect.stringContaining('add --replace'),
    });
    expect(run('library', 'restore', backup, '--replace').stdout).toContain('holds 1 take with 1 recording');
    rmSync(join(folder, 'audio', recordings()[0]!));
    expect(run('library', 'check')).toMatchObject({
      status: 1,
      stdout: expect.stringContaining('is missing'),
    });
    expect(run('library', 'check', '--from', backup)).toMatchObject({
      status: 0,
      stdout: 'Everything is as it was kept.\n',
    });
  }, 180_000);
});

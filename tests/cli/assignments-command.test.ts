import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleTakePath } from './built-program.ts';

it('hands out a sheet, counts what is played to it, sends it as a file and ends it', () => {
  const folder = temporaryFolder();
  const run = (...words: string[]) => {
    const { status, stdout, stderr } = runProgram([...words, '--library', 'library'], { folder });
    return { status, said: stdout + stderr };
  };
  writeFileSync(
    join(folder, 'week.sheet'),
    'title: Accent on one\ndue: 2020-01-31\ntempo: 144\n\n>RLR >LRL ; times: 9\n',
  );
  copyFileSync(sampleTakePath('accent-one'), join(folder, 'monday.wav'));

  const set = run('assignments', 'set', 'week.sheet', '--player', 'Mirelle', '--note', 'Softly; slowly');
  expect(set).toMatchObject({ status: 0, said: expect.stringContaining('was due on 2020-01-31') });
  expect(run('assignments').said).toMatch(
    /Mirelle: Accent on one\n +was due on 2020-01-31.*not played yet\n/,
  );

  run(
    'grade',
    'monday.wav',
    '--exercise',
    '>RLR >LRL',
    '--bpm',
    '144',
    '--times',
    '9',
    '--player',
    'Mirelle',
  );
  const listed = run('assignments', '--json').said;
  expect(JSON.parse(listed)[0].plays).toHaveLength(1);
  expect(run('assignments').said).toMatch(/played once, on \d{4}-\d\d-\d\d, best score \d+\n/);

  expect(run('assignments', 'write', 'newest', '--output', 'mirelle.sheet').status).toBe(0);
  const sent = readFileSync(join(folder, 'mirelle.sheet'), 'utf8');
  expect(sent).toContain('for: Mirelle\ndue: 2020-01-31\nnote: "Softly; slowly"\n');
  expect(run('assignments', 'set', 'mirelle.sheet', '--bpm', '150').said).toContain('for Mirelle');
  expect(run('assignments', 'write', 'newest').said).toMatch(/\ntempo: 150\ntimes: 9\n\n>RLR >LRL\n$/);
  expect(run('assignments', 'set', 'mirelle.sheet', '--bpm', '5').said).toContain('--bpm 5 must be a number');

  expect(run('assignments', 'done', 'newest').status).toBe(0);
  expect(run('assignments', 'delete', 'newest').status).toBe(2);
  expect(run('assignments', '--player', 'Nobody').said).toContain('There is no player "Nobody"');
});

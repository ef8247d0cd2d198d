import { copyFileSync, cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assignmentsCommand } from '../../src/cli/assignments-command.ts';
import { libraryCommand } from '../../src/cli/library-command.ts';
import { playersCommand } from '../../src/cli/players-command.ts';
import { practiceCommand } from '../../src/cli/practice-command.ts';
import { takesCommand } from '../../src/cli/takes-command.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleTakePath } from './built-program.ts';

const said: string[] = [];
const say = (text: string) => {
  said.push(text);
};
const output = { stdout: say, stderr: say };
const whole = [takesCommand, practiceCommand, assignmentsCommand, playersCommand, libraryCommand].map(
  (make) => make(output),
);
const parts = whole.flatMap((command) =>
  command.commands.map((part) => [command.name(), part.name(), part] as const),
);

function helpOf(part: Command): string {
  said.length = 0;
  part.outputHelp();
  return said.join('');
}

const examplesIn = (help: string) => [...help.matchAll(/^ {2}evenhand (.+)$/gm)].map(([, line]) => line!);
const wordsOf = (line: string) => line.match(/"[^"]*"|\S+/g)!.map((word) => word.replaceAll('"', ''));

describe('the help of a command with parts', () => {
  const prepared = mkdtempSync(join(tmpdir(), 'evenhand-help-'));
  let entry = '';
  const run = (folder: string, ...words: string[]) => runProgram(words, { folder });

  beforeAll(() => {
    copyFileSync(sampleTakePath('accent-one'), join(prepared, 'monday.wav'));
    for (const sheet of ['week-7.sheet', 'monday.sheet'])
      writeFileSync(join(prepared, sheet), 'tempo: 144\n>RLR >LRL ; times: 9\n');
    const here = ['--library', 'library'];
    for (const line of [
      'grade monday.wav --sheet week-7.sheet --player Mirelle',
      'players add Tomas',
      'assignments set week-7.sheet --player Mirelle --due 2026-12-01',
      'practice log 25 --player Mirelle',
      'takes export newest --to monday.take.zip',
      'library backup stick',
      'library export everything.library.tar',
    ]) {
      const { status, stdout, stderr } = run(prepared, ...wordsOf(line), ...here);
      expect(status, `${line}\n${stderr}`).toBe(0);
      if (line.startsWith('practice')) entry = stdout.split(' ')[0]!;
    }
    copyFileSync(join(prepared, 'monday.take.zip'), join(prepared, 'tuesday.take.zip'));
  });

  afterAll(() => rmSync(prepared, { recursive: true }));

  it.each(parts)('%s %s gives examples that run', (_, part, command) => {
    const help = helpOf(command);
    for (const line of help.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const [example] = examplesIn(help);
    expect(example).toBeDefined();
    const folder = temporaryFolder();
    cpSync(prepared, folder, { recursive: true });
    // Brought back and taken in is what isn't there yet, and so is what is written.
    if (['restore', 'import'].includes(part)) rmSync(join(folder, 'library'), { recursive: true });
    if (part === 'export') rmSync(join(folder, 'everything.library.tar'));
    const line = example!.replace('/media/stick/takes', 'stick').replace('3f0a91c2', entry);
    const { status, stdout, stderr } = run(folder, ...wordsOf(line), '--library', 'library');
    expect(status, `${example}\n${stderr}`).toBe(0);
    expect(stdout + stderr).not.toBe('');
  });
});

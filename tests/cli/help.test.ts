import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { repository, runProgram, sampleTakePath } from './built-program.ts';

/** Names in the program's list of commands. */
const commands = [
  ...readFileSync(join(repository, 'src/main.ts'), 'utf8').matchAll(/^ {2}'?([a-z-]+)'?: async \(\) =>/gm),
].map(([, name]) => name!);

/** Commands that run until they are interrupted; their own tests run them. */
const running = ['serve'];

/** Commands on a library, which is made for them. */
const needLibrary = [
  'takes',
  'players',
  'library',
  'progress',
  'compare',
  'assignments',
  'practice',
  'lesson',
];

const demo = JSON.parse(readFileSync(join(repository, 'reports/samples/demo.json'), 'utf8')) as TakeResult;

/** Lines of the help that begin with the program's name. */
const examplesIn = (help: string) => [...help.matchAll(/^ {2}(evenhand .+)$/gm)].map(([, line]) => line!);

/** Keeps a second take, and gives the short name of the one that isn't the newest. */
function oldestOfTwo(folder: string, kept: readonly string[]): string {
  copyFileSync(sampleTakePath('accent-two'), join(folder, 'tuesday.wav'));
  runProgram(['grade', 'tuesday.wav', ...kept], { folder });
  const listed = runProgram(['takes', '--library', 'library'], { folder }).stdout;
  const names = listed.match(/\b[0-9a-f]{8}\b/g)!;
  expect(names).toHaveLength(2);
  return names.at(-1)!;
}

describe('help', () => {
  it('lists every command, each with what it does', () => {
    expect(commands.length).toBeGreaterThanOrEqual(3);
    const { status, stdout, stderr } = runProgram(['--help']);
    expect([status, stderr]).toEqual([0, '']);
    for (const name of commands) expect(stdout).toMatch(new RegExp(`^  ${name}\\b.* {2}[A-Z]`, 'm'));
  });

  it.each(commands.filter((name) => !running.includes(name)))(
    'of %s names its options and gives examples that run',
    (name) => {
      const { status, stdout, stderr } = runProgram([name, '--help']);
      expect([status, stderr]).toEqual([0, '']);
      expect(stdout).toContain(`evenhand ${name}`);
      for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);

      const folder = temporaryFolder();
      copyFileSync(sampleTakePath('accent-one'), join(folder, 'monday.wav'));
      writeFileSync(join(folder, 'monday.mid'), takeMidi(demo)!);
      for (const sheet of ['week-7.sheet', 'monday.sheet'])
        writeFileSync(join(folder, sheet), 'tempo: 144\n>RLR >LRL ; times: 9\n');
      const kept = ['--sheet', 'week-7.sheet', '--player', 'Mirelle', '--library', 'library'];
      if (needLibrary.includes(name)) runProgram(['grade', 'monday.wav', ...kept], { folder });
      const oldest = name === 'compare' ? oldestOfTwo(folder, kept) : '';
      const examples = examplesIn(stdout);
      expect(examples.length).toBeGreaterThan(0);
      for (const example of examples) {
        const [line = '', piped] = example.split(' < ');
        const words = line
          .replace('3f0a91c2', oldest)
          .match(/"[^"]*"|\S+/g)!
          .map((word) => word.replaceAll('"', ''));
        const input = piped === undefined ? {} : { input: readFileSync(join(folder, piped)) };
        const ending = runProgram(
          [...words.slice(1), ...(needLibrary.includes(name) ? ['--library', 'library'] : [])],
          {
            folder,
            ...input,
          },
        );
        expect(ending.status, `${example}\n${ending.stderr}`).toBe(0);
        expect(ending.stdout).not.toBe('');
      }
    },
  );
});

import { Command } from 'commander';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { exitCodes } from '../../src/cli/exit-codes.ts';
import { type CommandTable, runCommandLine } from '../../src/cli/run-command-line.ts';

const command = (name: string, action: () => void = () => {}) =>
  new Command(name).description(`does ${name}`).requiredOption('--bpm <number>').action(action);

async function run(args: string[], commands: CommandTable = { play: async () => command('play') }) {
  const told = { stdout: '', stderr: '' };
  for (const stream of ['stdout', 'stderr'] as const) {
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      told[stream] += text;
      return true;
    });
  }
  const code = await runCommandLine(args, { version: '1.2.3', commands });
  return { code, ...told };
}

const { exitCode } = process;
afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = exitCode;
});

describe('runCommandLine', () => {
  it('runs the example of its comment', async () => {
    expect(await run(['--version'])).toEqual({ code: 0, stdout: '1.2.3\n', stderr: '' });
  });

  it('shows help of the program and of a command on stdout', async () => {
    expect(await run(['--help'])).toMatchObject({ code: 0, stdout: expect.stringContaining('does play') });
    expect(await run(['play', '--help'])).toMatchObject({
      code: 0,
      stdout: expect.stringContaining('--bpm'),
    });
    expect(await run(['help', 'play'])).toMatchObject({ code: 0, stdout: expect.stringContaining('--bpm') });
  });

  it.each([
    ['nothing at all', []],
    ['an unknown command', ['plya']],
    ['help for an unknown command', ['help', 'plya']],
    ['an unknown option', ['play', '--bpm', '90', '--loud']],
    ['a missing option', ['play']],
    ['a missing value', ['play', '--bpm']],
    ['too many words', ['play', '--bpm', '90', 'more']],
  ])('calls %s a usage error, told on stderr', async (_, args) => {
    const { code, stdout, stderr } = await run(args);
    expect(code).toBe(exitCodes.usage);
    expect(stdout).toBe('');
    expect(stderr).not.toBe('');
  });

  it('names the nearest command to one that is asked for help', async () => {
    expect((await run(['help', 'plya'])).stderr).toMatch(/^Unknown command 'plya'\. Did you mean play\?/);
  });

  it('tells what a command throws in one line and calls it a fault', async () => {
    const commands = {
      play: async () =>
        command('play', () => {
          throw new Error('No stick.');
        }),
    };
    expect(await run(['play', '--bpm', '90'], commands)).toEqual({
      code: 1,
      stdout: '',
      stderr: 'evenhand: No stick.\n',
    });
  });

  it('gives back the exit code that a command sets', async () => {
    const commands = {
      play: async () =>
        command('play', () => {
          process.exitCode = exitCodes.notGradable;
        }),
    };
    expect((await run(['play', '--bpm', '90'], commands)).code).toBe(4);
  });

  it('loads the command that is called and no other', async () => {
    const loaded: string[] = [];
    const load = (name: string) => async () => {
      loaded.push(name);
      return command(name);
    };
    const table = { play: load('play'), rest: load('rest') };
    await run(['play', '--bpm', '90'], table);
    expect(loaded).toEqual(['play']);
    expect((await run(['toString'], table)).code).toBe(exitCodes.usage);
  });
});

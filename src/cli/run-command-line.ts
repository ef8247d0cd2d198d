import { Command, CommanderError } from 'commander';
import { exitCodes } from './exit-codes.ts';

/** Command name → a function that loads the command. */
export type CommandTable = Readonly<Record<string, () => Promise<Command>>>;

export interface Program {
  readonly version: string;
  readonly commands: CommandTable;
}

/**
 * Runs one command line and returns the exit code. Only the named command's module is loaded; help and unknown
 * names load them all. A command that ends with a code other than 0 sets `process.exitCode` itself; what it throws
 * is told on stderr in one line and counts as a fault.
 *
 * @example
 * await runCommandLine(['--version'], { version: '1.0.0', commands: {} }); // prints 1.0.0, returns 0
 */
export async function runCommandLine(
  args: readonly string[],
  { version, commands }: Program,
): Promise<number> {
  const program = new Command('evenhand')
    .description('Grades recorded practice takes of accented-triplet exercises.')
    .version(version, '--version', 'show the version')
    .helpOption('-h, --help', 'show this help')
    .showHelpAfterError('`evenhand --help` lists what there is.');

  const [first = ''] = args;
  const named = Object.hasOwn(commands, first) ? [commands[first]!] : Object.values(commands);
  for (const load of named) program.addCommand(await load());
  throwInsteadOfExit(program);
  if (args.length === 0) {
    process.stderr.write(program.helpInformation());
    return exitCodes.usage;
  }

  try {
    await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
    process.stderr.write(`evenhand: ${error instanceof Error ? error.message : String(error)}\n`);
    return exitCodes.fault;
  }
  return typeof process.exitCode === 'number' ? process.exitCode : exitCodes.done;
}

/** Commander passes this setting on only to commands made by itself, hence the walk. */
function throwInsteadOfExit(command: Command): void {
  command.exitOverride();
  for (const part of command.commands) throwInsteadOfExit(part);
}

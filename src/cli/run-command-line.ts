import { Command, CommanderError } from 'commander';
import { CommandFault } from './command-fault.ts';
import { exitCodes } from './exit-codes.ts';
import { usageSentence } from './usage-sentence.ts';

/** Command name → a function that loads the command. */
export type CommandTable = Readonly<Record<string, () => Promise<Command>>>;

interface Program {
  readonly version: string;
  readonly commands: CommandTable;
}

/**
 * Runs one command line and returns the exit code. Only the named command's module is loaded; help and unknown
 * names load them all. A command ends with another code by throwing a `CommandFault`, whose message is told on stderr,
 * or, with its result written, by setting `process.exitCode`; anything else that it throws counts as a fault.
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
    .helpCommand('help [command]', 'show the help of a command')
    // A command sees all that stands behind its name, so that its parts may have options that it has too.
    .enablePositionalOptions();

  const [first = ''] = args;
  // The version is asked of many programs by scripts; it needs no command.
  const named = Object.hasOwn(commands, first)
    ? [commands[first]!]
    : first === '--version'
      ? []
      : Object.values(commands);
  for (const load of named) program.addCommand(await load());
  settle(program);
  if (args.length === 0) {
    process.stderr.write(program.helpInformation());
    return exitCodes.usage;
  }

  const [, second = ''] = args;
  // Help for what isn't there is refused as the command itself is, with the nearest name.
  const helpForNothing = first === 'help' && second !== '' && !Object.hasOwn(commands, second);
  try {
    await program.parseAsync(helpForNothing ? [second] : args, { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
    if (error instanceof CommandFault) {
      process.stderr.write(`${error.message}\n`);
      return error.exitCode;
    }
    process.stderr.write(`evenhand: ${error instanceof Error ? error.message : String(error)}\n`);
    return exitCodes.fault;
  }
  return typeof process.exitCode === 'number' ? process.exitCode : exitCodes.done;
}

/** What holds for every command. Commander passes it on only to commands made by itself, hence the walk. */
function settle(command: Command, name = command.name()): void {
  command.exitOverride().helpOption('-h, --help', 'show this help');
  command.configureOutput({ outputError: (text, write) => write(usageSentence(text, name)) });
  for (const part of command.commands) settle(part, `${name} ${part.name()}`);
}

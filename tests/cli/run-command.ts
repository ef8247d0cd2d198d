import { type Command, CommanderError } from 'commander';
import type { CommandOutput } from '../../src/cli/command-output.ts';

/** Runs one command with arguments and keeps what it says; a fault of its own is thrown. */
export async function runCommand(make: (output: CommandOutput) => Command, args: readonly string[]) {
  const said = { stdout: '', stderr: '', exitCode: 0 };
  const command = make({
    stdout: (text) => {
      said.stdout += text;
    },
    stderr: (text) => {
      said.stderr += text;
    },
  }).exitOverride();
  try {
    await command.parseAsync(args, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    said.exitCode = error.exitCode;
  }
  return said;
}

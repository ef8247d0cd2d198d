import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { Command } from 'commander';
import { defaultLibraryFolder } from '../../library/default-library-folder.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import { libraryFaultSentence } from '../../library/library-fault-sentence.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';

export interface LibraryOption {
  readonly library?: string;
}

/** Adds the option that says where takes are kept. */
export function withLibraryOption(command: Command): Command {
  return command.option('--library <folder>', `where takes are kept (${libraryFolder({})})`);
}

/** A command, or a part of one, on a library: it says where that is and writes where it is told to. */
export const libraryCommand = (name: string, output: CommandOutput): Command =>
  withLibraryOption(new Command(name).configureOutput({ writeOut: output.stdout, writeErr: output.stderr }));

/** Adds lines to try to a command's help. */
export const withExamples = (command: Command, ...lines: readonly string[]): Command =>
  command.addHelpText('after', `\nExamples:\n${lines.map((line) => `  evenhand ${line}\n`).join('')}`);

/** A command with parts: each part has its own options, and a library named before the part holds for it. */
export function withLibraryParts(command: Command, parts: readonly Command[]): Command {
  command.enablePositionalOptions().hook('preSubcommand', (whole, part) => {
    const { library } = whole.opts<LibraryOption>();
    if (library !== undefined) part.setOptionValue('library', library);
  });
  for (const part of parts) command.addCommand(part);
  return command;
}

/** The folder named by `--library`, else the platform's place for a program's data. */
export function libraryFolder({ library }: LibraryOption): string {
  if (library === '')
    throw new CommandFault('usage', '--library has an empty name behind it. Name a folder.');
  return (
    library ?? defaultLibraryFolder({ platform: process.platform, home: homedir(), environment: process.env })
  );
}

/**
 * Opens the library, does something in it, and closes it; what it refuses becomes a fault of the command. One that
 * isn't there is made only where something is to be kept (`make`): else a mistyped folder would come into being, empty.
 */
export async function inLibrary<T>(
  option: LibraryOption,
  work: (library: FolderLibrary) => Promise<T>,
  { make = false } = {},
): Promise<T> {
  const folder = libraryFolder(option);
  if (!make && !existsSync(folder))
    throw new CommandFault(
      'usage',
      `No takes are kept in "${folder}": there is no such folder. Check --library, or keep a take first: \`evenhand grade … --player NAME\`.`,
    );
  try {
    const { openFolderLibrary } = await import('../../library/open-folder-library.ts');
    const library = await openFolderLibrary(folder);
    try {
      return await work(library);
    } finally {
      await library.close();
    }
  } catch (error) {
    if (error instanceof LibraryFault) throw new CommandFault('fault', libraryFaultSentence(error));
    throw error;
  }
}

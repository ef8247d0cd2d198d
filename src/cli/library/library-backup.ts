import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { backUpLibrary } from '../../library/backup/back-up-library.ts';
import type { CommandOutput } from '../command-output.ts';
import { exitCodes } from '../exit-codes.ts';
import { lackingSentence } from './lacking-sentence.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

const help = `
Examples:
  evenhand library backup /media/stick/takes

The folder is a library itself: \`evenhand takes --library FOLDER\` shows what is in it. The next
backup to the same folder copies only what is new, and what was deleted from the library goes
from the backup too. Keep one on another disk, and several folders for several days.
`;

/** Writes a backup of the library, also while it is in use. */
export function libraryBackupCommand(output: CommandOutput): Command {
  const command = new Command('backup')
    .description('Copy the whole library to a folder; only what is new is copied again.')
    .argument('<folder>', 'an empty or new folder, or an earlier backup')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((folder: string, option: LibraryOption) =>
    inLibrary(option, async (library) => {
      const { takes, copied, copiedBytes, cleared, lacking } = await backUpLibrary(library, folder);
      const gone = cleared > 0 ? ` ${cleared} that the library has no longer deleted.` : '';
      output.stdout(
        `${counted(takes, 'take')} backed up to ${folder}: ${counted(copied, 'recording')} copied (${(copiedBytes / 1e6).toFixed(1)} MB).${gone}\n`,
      );
      output.stderr(lackingSentence(lacking));
      if (lacking.length > 0) process.exitCode = exitCodes.fault;
    }),
  );
}

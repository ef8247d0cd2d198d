import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { withArchive } from '../../library/backup/archive-source.ts';
import { backupSource } from '../../library/backup/library-source.ts';
import { type Restored, type RestoreOptions, restoreLibrary } from '../../library/backup/restore-library.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import { libraryFaultSentence } from '../../library/library-fault-sentence.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { lackingSentence } from './lacking-sentence.ts';
import { type LibraryOption, libraryFolder, withLibraryOption } from './with-library.ts';

type Options = LibraryOption & RestoreOptions;

const restoreHelp = `
Examples:
  evenhand library restore /media/stick/takes
  evenhand library restore /media/stick/takes --library new-place

A library that holds something is left alone unless you add --replace: then all of it, takes and
notes that came after the backup too, gives way to the backup.
`;

const importHelp = `
Examples:
  evenhand library import everything.library.tar
`;

/** Makes the library what a backup holds. */
export function libraryRestoreCommand(output: CommandOutput): Command {
  const command = new Command('restore')
    .description('Bring the library back from a backup.')
    .argument('<folder>', 'the folder of the backup')
    .addHelpText('after', restoreHelp);
  return restoring(command, output, (from, folder, options) =>
    restoreLibrary(backupSource(from), folder, options),
  );
}

/** Makes the library what an archive holds. */
export function libraryImportCommand(output: CommandOutput): Command {
  const command = new Command('import')
    .description('Make a library of an archive that export wrote.')
    .argument('<file>', 'the archive')
    .addHelpText('after', importHelp);
  return restoring(command, output, (from, folder, options) =>
    withArchive(from, folder, (source) => restoreLibrary(source, folder, options)),
  );
}

function restoring(
  command: Command,
  output: CommandOutput,
  work: (from: string, folder: string, options: RestoreOptions) => Promise<Restored>,
): Command {
  command
    .option('--replace', 'put it in the place of everything the library holds')
    .option('--incomplete', 'go on where recordings are missing or damaged')
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(
    async (from: string, { replace, incomplete, ...option }: Options) => {
      const folder = libraryFolder(option);
      try {
        const { takes, recordings, lacking } = await work(from, folder, { replace, incomplete });
        output.stdout(
          `${folder} holds ${counted(takes, 'take')} with ${counted(recordings, 'recording')} now.\n`,
        );
        output.stderr(lackingSentence(lacking));
      } catch (error) {
        if (error instanceof LibraryFault) throw new CommandFault('fault', libraryFaultSentence(error));
        throw error;
      }
    },
  );
}

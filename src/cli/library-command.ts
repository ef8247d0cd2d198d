import { Command } from 'commander';
import { counted } from '../core/result/figures.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { libraryBackupCommand } from './library/library-backup.ts';
import { libraryCheckCommand } from './library/library-check.ts';
import { libraryExportCommand } from './library/library-export.ts';
import { libraryImportCommand, libraryRestoreCommand } from './library/library-restore.ts';
import {
  inLibrary,
  type LibraryOption,
  withLibraryOption,
  withLibraryParts,
} from './library/with-library.ts';

const help = `
Examples:
  evenhand library
  evenhand library check
  evenhand library backup backup-of-takes
  evenhand library export everything.library.tar

A backup and an archive hold everything, private notes on discomfort too: whoever gets one can
read and hear it all. To pass on some takes: evenhand takes export.
`;

/** The command for a library as a whole: what it holds, backups, checks, archives. */
export function libraryCommand(output: CommandOutput = toProcess): Command {
  const command = withLibraryOption(
    new Command('library')
      .description('Back up, restore, check and move the library of takes as a whole.')
      .option('--json', 'write JSON')
      .addHelpText('after', help)
      .configureOutput({ writeOut: output.stdout, writeErr: output.stderr }),
  ).action(({ json, ...option }: LibraryOption & { readonly json?: true }) =>
    inLibrary(option, async ({ db, folder }) => {
      const { storageUse } = await import('../library/storage-use.ts');
      const use = await storageUse(db);
      if (json) return output.stdout(`${JSON.stringify({ folder, ...use }, null, 2)}\n`);
      const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;
      output.stdout(
        `${folder}\n${counted(use.takes, 'take')}, ${counted(use.recordings, 'recording')} (${megabytes(use.audioBytes)}), tables ${megabytes(use.tableBytes)}\n`,
      );
    }),
  );
  return withLibraryParts(command, [
    libraryBackupCommand(output),
    libraryRestoreCommand(output),
    libraryCheckCommand(output),
    libraryExportCommand(output),
    libraryImportCommand(output),
  ]);
}

import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { Command } from 'commander';
import { takeFileFaultSentence } from '../../library/take-file/take-file-fault-sentence.ts';
import { importTakeFile } from '../../library/take-files.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { exitCodes } from '../exit-codes.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

const help = `
Examples:
  evenhand takes import monday.take.zip tuesday.take.zip

A take that is there already stays as it is; only remarks that are new are added.
`;

/** Takes in take files by the dozen; one that can't be read doesn't stop the others. */
export function takesImportCommand(output: CommandOutput): Command {
  const command = new Command('import')
    .description('Take in takes from files that were exported elsewhere.')
    .argument('<files...>', 'take files')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((files: string[], option: LibraryOption) =>
    inLibrary(
      option,
      async (library) => {
        let [kept, there, failed] = [0, 0, 0];
        const tell = (sentence: string) => {
          failed += 1;
          output.stderr(`${sentence}\n`);
        };
        for (const file of files) {
          const bytes = bytesOf(file);
          if (bytes instanceof CommandFault) {
            tell(bytes.message);
            continue;
          }
          const read = await importTakeFile(library, { bytes, keptAt: Date.now() });
          const faults = read.ok ? read.faults : [read.fault];
          for (const fault of faults) tell(takeFileFaultSentence(basename(file), fault));
          if (!read.ok) continue;
          kept += read.takes.filter(({ outcome }) => outcome === 'kept').length;
          there += read.takes.filter(({ outcome }) => outcome === 'already-there').length;
        }
        output.stdout(
          `${kept} taken in, ${there} there already${failed > 0 ? `, ${failed} not readable` : ''}.\n`,
        );
        if (failed > 0) process.exitCode = exitCodes.unreadableInput;
      },
      { make: true },
    ),
  );
}

function bytesOf(path: string): Uint8Array | CommandFault {
  try {
    return readFileSync(path);
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    const why = missing ? 'There is no such file' : `It can't be read (${(error as Error).message})`;
    return new CommandFault('unreadableInput', `"${path}": ${why}. Check its name and its folder.`);
  }
}

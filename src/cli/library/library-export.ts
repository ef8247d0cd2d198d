import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { outputFaultSentence } from '../../formats/output-fault-sentence.ts';
import { outputFault } from '../../formats/write-atomically.ts';
import { archiveLibrary } from '../../library/backup/archive-library.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { exitCodes } from '../exit-codes.ts';
import { lackingSentence } from './lacking-sentence.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

const help = `
Examples:
  evenhand library export everything.library.tar

One file to move house with: \`evenhand library import\` makes a library of it on another computer.
`;

/** Writes the whole library as one archive. */
export function libraryExportCommand(output: CommandOutput): Command {
  const command = new Command('export')
    .description('Write the whole library as one file.')
    .argument('<file>', 'the file, such as everything.library.tar')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((file: string, option: LibraryOption) =>
    inLibrary(option, async (library) => {
      const fault = outputFault(file);
      if (fault !== undefined) throw new CommandFault('usage', outputFaultSentence(file, fault));
      const { takes, recordings, bytes, lacking } = await archiveLibrary(library, file);
      output.stdout(
        `${counted(takes, 'take')} with ${counted(recordings, 'recording')} written to ${file} (${(bytes / 1e6).toFixed(1)} MB).\n`,
      );
      output.stderr(lackingSentence(lacking));
      if (lacking.length > 0) process.exitCode = exitCodes.fault;
    }),
  );
}

import { Command } from 'commander';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { gradeTake } from '../../core/grade-take.ts';
import { regradeTake } from '../../library/change-take.ts';
import { audioFile } from '../../library/folder-audio-store.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { programVersion } from '../../library/program-version.ts';
import { readTake } from '../../library/read-take.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { openTake } from '../open-take.ts';
import { findTake } from './find-take.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly outdated?: true;
}

const help = `
Examples:
  evenhand takes regrade newest
  evenhand takes regrade --outdated

Figures of different versions needn't agree to the last digit. Grading all takes with one version
makes them comparable. A take that can't be read keeps the result it has.
`;

/** Grades kept takes again with this version of the program, from their recordings. */
export function takesRegradeCommand(output: CommandOutput): Command {
  const command = new Command('regrade')
    .description('Grade kept takes again with this version.')
    .argument('[takes...]', 'their names on the list, or newest')
    .option('--outdated', 'all that another version graded')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], { outdated, ...option }: Options) =>
    inLibrary(option, async (library) => {
      if (typed.length > 0 === (outdated === true))
        throw new CommandFault('usage', 'Name the takes, or write --outdated, one of the two.');
      const ids = outdated
        ? (
            await library.db
              .selectFrom('take')
              .select('id')
              .where('gradedWith', '!=', programVersion)
              .execute()
          ).map(({ id }) => id)
        : await Promise.all(typed.map((name) => findTake(library.db, name)));
      let done = 0;
      for (const id of ids) {
        const problem = await regraded(library, id);
        if (problem === null) done += 1;
        else output.stderr(`${shortId(id)}: ${problem} It keeps the result it has.\n`);
      }
      output.stdout(`${done} of ${ids.length} graded again with version ${programVersion}.\n`);
    }),
  );
}

/** Grades one take anew; null when that went well, else why not. */
async function regraded(library: FolderLibrary, id: string): Promise<string | null> {
  const { take, result, sheetText } = await readTake(library.db, id);
  if (take.audioHash === null) return 'Its recording was not kept.';
  if (take.partFrom !== null) return 'It is a part of a longer recording.';
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return 'Its sheet can not be read.';
  try {
    const recording = await openTake(audioFile(library.folder, take.audioHash));
    try {
      const { source, notes, gaps } = recording;
      const { name, sha256 } = result.recording;
      const warnings = notes.map(({ code, facts }) => ({ code, facts: { ...facts } }));
      const anew = gradeTake(source, parsed.sheet, { name, sha256, warnings, gaps });
      await regradeTake(library.db, { id, result: anew, gradedWith: programVersion });
      return null;
    } finally {
      recording.close();
    }
  } catch (error) {
    if (error instanceof CommandFault) return error.message;
    throw error;
  }
}

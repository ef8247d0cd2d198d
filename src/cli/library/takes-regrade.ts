import { Command } from 'commander';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { rubrics } from '../../core/scoring/rubrics/index.ts';
import { steady } from '../../core/scoring/rubrics/steady.ts';
import { regradeTake } from '../../library/change-take.ts';
import { audioFile } from '../../library/folder-audio-store.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { programVersion } from '../../library/program-version.ts';
import { readTake } from '../../library/read-take.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { openPlayed } from '../open-played.ts';
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
  const { take, result, sheetText, recordingFacts } = await readTake(library.db, id);
  if (take.audioHash === null) return 'Its recording was not kept.';
  if (take.partFrom !== null) return 'It is a part of a longer recording.';
  if (result.model) return 'It was held against a model, which was not kept.';
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return 'Its sheet can not be read.';
  const marked = result.scores?.rubric;
  const rubric = marked === undefined ? steady : rubrics.find((one) => one.id === marked);
  if (rubric === undefined) return `It was marked by a rubric of your own, "${marked}", which was not kept.`;
  try {
    const played = await openPlayed(audioFile(library.folder, take.audioHash));
    try {
      const { name, sha256 } = result.recording;
      const anew = played.grade(parsed.sheet, { ...recordingFacts, name, sha256, rubric });
      await regradeTake(library.db, { id, result: anew, gradedWith: programVersion });
      return null;
    } finally {
      played.close();
    }
  } catch (error) {
    if (error instanceof CommandFault) return error.message;
    throw error;
  }
}
